#pragma once

#include "core/journal/room/room_entries.h"
#include "ui/page/page.h"
#include "ui/page/undoing.h"

#include <functional>

namespace plumule::ui {

// One part of the Set-up page: forms over one concept. It reads again when told, and says what it
// did or why not in the message bar.
class SetupPart : public QWidget
{
    Q_OBJECT

public:
    SetupPart(Journal& journal, Services services, QWidget* parent = nullptr)
        : QWidget(parent)
        , m_journal(journal)
        , m_services(services)
    {}

    [[nodiscard]] virtual QString name() const = 0;
    [[nodiscard]] virtual bool concerns(Concept about) const = 0;
    virtual void reload() = 0;

    // Whether something was typed that isn't saved.
    [[nodiscard]] virtual bool hasUnsaved() const { return false; }
    // Saves it; false, and said why, where that is refused.
    virtual bool saveTyped() { return true; }

protected:
    // Goes on at once, or where something isn't saved after asking what shall become of it.
    void leaveThen(const std::function<void()>& go)
    {
        if (!hasUnsaved()) {
            go();
            return;
        }
        m_services.ask.unsaved(
            this, tr("What you typed under %1 is not saved. Save it first?").arg(name()),
            [this, go] {
                if (saveTyped()) {
                    go();
                }
            },
            go);
    }

    [[nodiscard]] Journal& journal() const { return m_journal; }
    [[nodiscard]] const Services& services() const { return m_services; }
    [[nodiscard]] Room room() const
    {
        const auto layout = m_journal.room().layout();
        return layout ? layout->room : Room();
    }

    // Says what was done, or why not; true when it was done.
    template <class T>
    bool settle(const Result<T>& result, const QString& saved)
    {
        if (!result) {
            m_services.messages.refuse(sentence(result.error()));
            return false;
        }
        if (!m_journal.didLastIntentionChange()) {
            m_services.messages.tell(tr("Nothing was different: there was nothing to save."));
            return true;
        }
        tellDone(m_journal, m_services, saved);
        return true;
    }

private:
    Journal& m_journal;
    Services m_services;
};

} // namespace plumule::ui
