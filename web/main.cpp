// Where the page starts. Everything the program does happens in app::step, whenever the platform has
// something for it.
#include "web/app.h"
#include "web/platform.h"

int main() {
    app::start();
    platform::run(app::step);
    return 0;
}
