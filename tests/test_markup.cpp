// HTML that cannot forget to escape.
#include <string>

#include "doctest/doctest.h"
#include "engine/markup.h"

namespace test_markup {

TEST_CASE("markup: a page is written by opening, filling and closing") {
    markup::Writer page;
    page.open("html", {{"lang", "en"}});
    page.open("body");
    page.leaf("h1", "Orchard lip balm");
    page.close();
    page.close();
    CHECK(page.finish() ==
          "<!doctype html>\n<html lang=\"en\"><body><h1>Orchard lip balm</h1>\n</body>\n</html>\n");
}

TEST_CASE("markup: what is still open at the end is closed, innermost first") {
    markup::Writer page;
    page.open("main");
    page.open("p");
    page.text("x");
    CHECK(page.finish() == "<!doctype html>\n<main><p>x</p>\n</main>\n");
}

TEST_CASE("markup: text and attributes cannot become markup") {
    const std::string hostile = "<script>alert('1')</script> & \"quoted\"";
    const std::string safe = "&lt;script&gt;alert(&#39;1&#39;)&lt;/script&gt; &amp; &quot;quoted&quot;";
    CHECK(markup::escape(hostile) == safe);
    markup::Writer page;
    page.leaf("p", hostile, {{"title", hostile}});
    CHECK(page.finish() == "<!doctype html>\n<p title=\"" + safe + "\">" + safe + "</p>\n");
}

TEST_CASE("markup: elements that hold nothing have no closing tag") {
    markup::Writer page;
    page.leaf("meta", "", {{"charset", "utf-8"}});
    page.leaf("br", "");
    CHECK(page.finish() == "<!doctype html>\n<meta charset=\"utf-8\">\n<br>\n");
}

TEST_CASE("markup: control characters and broken UTF-8 become the replacement character") {
    CHECK(markup::escape(std::string("a\0b", 3)) ==
          "a\xEF\xBF\xBD"
          "b");
    CHECK(markup::escape("a\x1B[2J") == "a\xEF\xBF\xBD[2J");
    CHECK(markup::escape("a\xC3") == "a\xEF\xBF\xBD");
    CHECK(markup::escape("line\nline\tend \xC3\xBC") == "line\nline\tend \xC3\xBC");
}

}  // namespace test_markup
