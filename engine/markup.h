// HTML that cannot forget to escape, nor that a text may run from right to left: every text goes through
// text(), leaf() or an attribute.
#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace markup {

using Attributes = std::vector<std::pair<std::string_view, std::string>>;

class Writer {
  public:
    void open(std::string_view element, const Attributes& attributes = {});
    void close();  // the element opened last
    void text(std::string_view plain);
    void leaf(std::string_view element, std::string_view plain, const Attributes& attributes = {});
    void style(std::string_view css);  // a constant of ours, never a person's text
    std::string finish();              // closes what is open; the text starts with <!doctype html>

  private:
    std::string out_ = "<!doctype html>\n";
    std::vector<std::string> open_;
};

std::string escape(std::string_view plain);

}  // namespace markup
