#pragma once

#include "core/trace/trace.h"
#include "ui/page/page.h"
#include "ui/widget/widgets.h"

class QLabel;
class QVBoxLayout;

namespace plumule::ui {

// A trace beside the stock: from a lot, a piece, a mix or a person on, or from a tray back.
class TraceCard : public Card
{
    Q_OBJECT

public:
    TraceCard(Journal& journal, Services services, QWidget* parent = nullptr);

    void follow(const TraceFrom& from);
    // Asks for a code, a lot, a piece, a water or a name, and follows it.
    void askWhat();
    // What it shows, as it is now.
    void readAgain();
    [[nodiscard]] bool isEmpty() const { return !m_from; }

Q_SIGNALS:
    void trayAsked(plumule::TrayId tray);

private:
    void buildFoot();
    [[nodiscard]] UnitText units() const;
    void showForward(const ForwardTrace& trace);
    void showBack(const BackTrace& trace);
    void addSowing(const TracedSowing& sowing);
    void addWords(const QString& words, const char* role);
    void choose();
    void printTrace();

    Journal& m_journal;
    Services m_services;
    QPushButton* m_print = nullptr;
    QPushButton* m_open = nullptr; // the tray's own sheet
    QVBoxLayout* m_lines = nullptr;
    std::optional<TraceFrom> m_from;
};

} // namespace plumule::ui
