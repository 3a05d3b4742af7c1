#pragma once

#include "ui/page/message_bar.h"
#include "ui/page/preferences.h"
#include "ui/widget/widgets.h"

class QLineEdit;

namespace plumule::ui {

// What this computer's label scanner sends before and after each code.
class ScannerCard : public Card
{
    Q_OBJECT

public:
    ScannerCard(Preferences& preferences, MessageBar& messages, QWidget* parent = nullptr);

private:
    void save();

    Preferences& m_preferences;
    MessageBar& m_messages;
    QLineEdit* m_before = nullptr;
    QLineEdit* m_after = nullptr;
};

} // namespace plumule::ui
