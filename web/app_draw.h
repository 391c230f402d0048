// The page around the screens: top bar, content, bottom bar or rail, sheet, keypad, message.
#pragma once

#include <string>
#include <string_view>

namespace app {

struct App;
enum class Screen;
void draw_page(App& app);
bool of_recipe(Screen screen);  // shows the open one
// A screen as it is called in the store: "book"; the first one for a name that is not known.
std::string place_name(Screen screen);
Screen back_from(Screen screen);  // where Escape and the browser's back lead
Screen place_called(std::string_view name);

}  // namespace app
