#include "web/screens/screens.hpp"
namespace torchside::web {
void chart_panel(App& app, Rect place) { (void)app; (void)place; }
void chart_sheet(App& app, Rect place, bool) { chart_panel(app, place); }
}
