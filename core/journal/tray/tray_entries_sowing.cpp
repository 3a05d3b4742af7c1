// Part of core/journal/tray/tray_entries.h: sowing.
#include "core/journal/tray/tray_entries.h"

#include "core/base/number_text.h"
#include "core/journal/ledger/ledger.h"
#include "core/journal/tray/moving.h"
#include "core/journal/tray/sowing.h"
#include "core/tray/tray_reason.h"
#include "core/tray/tray_repository.h"

namespace plumule {
namespace {

// The codes of the new trays, in order.
Result<std::vector<std::string>> codesFor(Database& database, const SowingDraft& draft,
                                          const Variety& variety)
{
    if (!draft.code) {
        return nextCodes(database, variety, draft.count);
    }
    const std::string code(trimmed(*draft.code));
    if (TrayRepository(database).findByCode(code)) {
        return fail(ErrorKind::Duplicate, TrayReason::CodeTaken, code);
    }
    return std::vector{code};
}

SownTray trayAt(const SowingDraft& draft, std::size_t index, const std::string& code)
{
    SownTray tray;
    tray.code = code;
    if (index < draft.pieces.size()) {
        tray.piece = draft.pieces[index];
    }
    if (index < draft.places.size()) {
        tray.place = draft.places[index];
    }
    tray.block = draft.block;
    return tray;
}

} // namespace

Result<std::vector<TrayId>> TrayEntries::sow(const SowingDraft& draft)
{
    return m_ledger.record(
        Intention::SowTrays, [&](Database& database, Deed& deed) -> Result<std::vector<TrayId>> {
            const auto ground = groundOf(database, draft);
            if (!ground) {
                return passOn(ground);
            }
            const auto codes = codesFor(database, draft, ground->protocol.variety);
            if (!codes) {
                return passOn(codes);
            }
            std::vector<TrayId> sown;
            for (std::size_t i = 0; i < codes->size(); ++i) {
                sown.push_back(storeSown(database, draft, *ground, trayAt(draft, i, (*codes)[i])));
            }
            deed.whom = namesOf(*codes);
            return sown;
        });
}

Done TrayEntries::moveTo(TrayId id, std::optional<PlaceId> place, Moment at)
{
    return m_ledger.record(Intention::MoveTray, [&](Database& database, Deed& deed) {
        return moveTrays(database, {{id, place}}, at, deed);
    });
}

} // namespace plumule
