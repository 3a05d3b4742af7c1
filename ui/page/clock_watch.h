#pragma once

#include "core/watering/round_key.h"

#include <QObject>

namespace plumule {
class Journal;
}

namespace plumule::ui {

// Looks at the clock from time to time and tells when another round is due than at the last look: a
// new day begins with its morning round.
class ClockWatch : public QObject
{
    Q_OBJECT

public:
    explicit ClockWatch(Journal& journal, QObject* parent = nullptr);

    // Looks now, as it does every quarter of a minute.
    void look();

Q_SIGNALS:
    void turned();

private:
    [[nodiscard]] RoundKey present() const;

    Journal& m_journal;
    RoundKey m_seen;
};

} // namespace plumule::ui
