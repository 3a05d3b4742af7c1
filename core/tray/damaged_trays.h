#pragma once

#include "core/storage/failure.h"
#include "core/tray/tray.h"

#include <set>

namespace plumule {

class Database;

// A tray that an answer does without, since a row of it can't be read.
struct DamagedTray
{
    TrayId tray;
    std::string code; // empty where that can't be read either
    bool operator==(const DamagedTray&) const = default;
};

// The tray that the damaged row belongs to; none where it is no tray's, or it is not known which
// row it is. Throws StorageFailure.
[[nodiscard]] std::optional<DamagedTray> damagedTray(Database& database, const Error& damage);

// What `ask(without)` answers, asked again without a tray whenever a row of it turns out damaged,
// so that a wrong cell costs the tray and not the answer. Those trays are added to `aside`. Damage
// that is no tray's, or of more trays than can be told one by one, is thrown.
template <class Ask>
auto askWithoutDamaged(Database& database, std::vector<DamagedTray>& aside, Ask ask)
{
    constexpr std::size_t kMostAside = 50;
    std::set<TrayId> without;
    for (;;) {
        try {
            return ask(without);
        } catch (const StorageFailure& failure) {
            const auto damaged = damagedTray(database, failure.error());
            if (!damaged || without.size() == kMostAside || !without.insert(damaged->tray).second) {
                throw;
            }
            aside.push_back(*damaged);
        }
    }
}

} // namespace plumule
