#pragma once

class QCoreApplication;

namespace plumule::ui {

// English numbers: "%n tray(s)" becomes "1 tray" and "2 trays", "%n variet(ies)" "1 variety". Other
// languages bring their own file with numerus forms, which is asked first.
void installEnglishPlurals(QCoreApplication& application);

} // namespace plumule::ui
