// The page around the screens: top bar, content, bottom bar or rail, sheet, keypad, message.
#pragma once

namespace app {

struct App;
void draw_page(App& app);

}  // namespace app
