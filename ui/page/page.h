#pragma once

#include "core/journal/journal.h"
#include "core/tray/tray_id.h"
#include "ui/page/ask.h"
#include "ui/page/message_bar.h"
#include "ui/page/preferences.h"
#include "ui/page/tasks.h"
#include "ui/text/text.h"

#include <QWidget>

namespace plumule::ui {

// What every page is handed besides the journal.
struct Services
{
    Ask& ask;
    MessageBar& messages;
    Preferences& preferences;
    Tasks& tasks;
};

// One page of the window: it asks the journal, shows a snapshot, and reads again when told of a
// change.
class Page : public QWidget
{
    Q_OBJECT

public:
    Page(Journal& journal, Services services, QWidget* parent = nullptr);

    // In the list of pages at the left.
    [[nodiscard]] virtual QString name() const = 0;
    // Which concepts its snapshot depends on.
    [[nodiscard]] virtual bool concerns(Concept about) const = 0;
    // Whether something was typed that isn't saved and would be lost with the page.
    [[nodiscard]] virtual bool hasUnsaved() const { return false; }
    // Reads again and shows.
    virtual void reload() = 0;
    // Puts the focus where work begins.
    virtual void begin();
    // Puts the focus where one searches; false where the page has no such place.
    virtual bool find() { return false; }
    // Asks for a printer, for the page's own sheet; false where it has none now.
    virtual bool print() { return false; }
    // Another round is due than before, perhaps of another day: reads again.
    virtual void followClock();

    // A change was announced: reads again soon, or when shown next. Many in a row count as one.
    void noteChange();

Q_SIGNALS:
    void trayAsked(plumule::TrayId tray);        // open its sheet
    void weighingAsked(const QString& trayCode); // go to the scale with it
    void wateringAsked(plumule::TrayId tray);    // water as needed, between rounds
    void badgeChanged(int count);                // 0: none

protected:
    void showEvent(QShowEvent* event) override;
    void changeEvent(QEvent* event) override;

    [[nodiscard]] Journal& journal() const { return m_journal; }
    [[nodiscard]] const Services& services() const { return m_services; }
    [[nodiscard]] UnitText units() const;
    // Reads again at once, in place of what noteChange() would do soon.
    void readAgain();

    // Shows why it was refused and returns false; true when it was done.
    template <class T>
    bool accept(const Result<T>& result)
    {
        if (!result) {
            m_services.messages.refuse(sentence(result.error()));
            return false;
        }
        return true;
    }
    // As ui/page/undoing.h has them.
    void tellLast();
    void tellDone(const QString& done);
    void undoLast();

private:
    void reloadIfStale();

    Journal& m_journal;
    Services m_services;
    bool m_isStale = true;
    bool m_isQueued = false;
};

} // namespace plumule::ui
