#include "core/journal/variety/variety_entries.h"

#include "core/base/number_text.h"
#include "core/journal/ledger/ledger.h"
#include "core/variety/variety_reason.h"
#include "core/variety/variety_repository.h"
#include "core/variety/variety_rules.h"

#include <algorithm>

namespace plumule {
namespace {

std::string upperCase(std::string_view text)
{
    std::string upper(text);
    std::transform(upper.begin(), upper.end(), upper.begin(), [](char letter) {
        return letter >= 'a' && letter <= 'z' ? static_cast<char>(letter - 'a' + 'A') : letter;
    });
    return upper;
}

Protocol tidied(const Protocol& protocol)
{
    Protocol tidy = protocol;
    tidy.variety.name = trimmed(protocol.variety.name);
    tidy.variety.codePrefix = upperCase(trimmed(protocol.variety.codePrefix));
    return tidy;
}

Done checkStored(VarietyRepository& varieties, const Variety& variety)
{
    const auto sameName = varieties.findByName(variety.name);
    if (sameName && sameName->id != variety.id) {
        return fail(ErrorKind::Duplicate, VarietyReason::NameTaken, variety.name);
    }
    if (variety.id.isStored() && !varieties.find(variety.id)) {
        return fail(ErrorKind::NotFound, VarietyReason::Unknown);
    }
    return {};
}

Done checkStored(VarietyRepository& varieties, const SeedLot& lot)
{
    if (!varieties.find(lot.variety)) {
        return fail(ErrorKind::NotFound, VarietyReason::Unknown);
    }
    const auto sameNumber = varieties.findLot(lot.variety, lot.lotNumber);
    if (sameNumber && sameNumber->id != lot.id) {
        return fail(ErrorKind::Duplicate, VarietyReason::LotNumberTaken, lot.lotNumber);
    }
    if (!lot.id.isStored()) {
        return {};
    }
    const auto present = varieties.find(lot.id);
    if (!present) {
        return fail(ErrorKind::NotFound, VarietyReason::LotUnknown);
    }
    if (present->variety != lot.variety && varieties.isInUse(lot.id)) {
        return fail(ErrorKind::InUse, VarietyReason::LotVarietyFixed, lot.lotNumber);
    }
    return {};
}

} // namespace

Result<std::vector<Variety>> VarietyEntries::all(Listed listed)
{
    return m_ledger.ask(
        [&](Database& database) { return VarietyRepository(database).all(listed); });
}

Result<Protocol> VarietyEntries::protocol(VarietyId variety)
{
    return m_ledger.ask([&](Database& database) -> Result<Protocol> {
        auto found = VarietyRepository(database).protocol(variety);
        if (!found) {
            return fail(ErrorKind::NotFound, VarietyReason::Unknown);
        }
        return std::move(*found);
    });
}

Result<Protocol> VarietyEntries::save(const Protocol& protocol)
{
    const bool isNew = !protocol.variety.id.isStored();
    return m_ledger.record(isNew ? Intention::AddVariety : Intention::ChangeVariety,
                           [&](Database& database, Deed& deed) -> Result<Protocol> {
                               Protocol stored = tidied(protocol);
                               deed.whom = stored.variety.name;
                               VarietyRepository varieties(database);
                               const Done checked = checkProtocol(stored).and_then(
                                   [&] { return checkStored(varieties, stored.variety); });
                               if (!checked) {
                                   return passOn(checked);
                               }
                               if (isNew) {
                                   varieties.insert(stored.variety);
                               } else {
                                   varieties.update(stored.variety);
                               }
                               varieties.storeStages(stored.variety.id, stored.stages);
                               return stored;
                           });
}

Done VarietyEntries::remove(VarietyId variety)
{
    return m_ledger.record(Intention::RemoveVariety, [&](Database& database, Deed& deed) -> Done {
        VarietyRepository varieties(database);
        const auto found = varieties.find(variety);
        if (!found) {
            return fail(ErrorKind::NotFound, VarietyReason::Unknown);
        }
        deed.whom = found->name;
        if (varieties.isInUse(variety)) {
            return fail(ErrorKind::InUse, VarietyReason::InUse, found->name);
        }
        varieties.remove(variety);
        return {};
    });
}

Result<std::vector<SeedLotStock>> VarietyEntries::lots(std::optional<VarietyId> variety,
                                                       Listed listed)
{
    return m_ledger.ask(
        [&](Database& database) { return VarietyRepository(database).stock(variety, listed); });
}

Result<SeedLot> VarietyEntries::saveLot(const SeedLot& lot)
{
    const bool isNew = !lot.id.isStored();
    return m_ledger.record(isNew ? Intention::AddSeedLot : Intention::ChangeSeedLot,
                           [&](Database& database, Deed& deed) -> Result<SeedLot> {
                               SeedLot stored = lot;
                               stored.lotNumber = trimmed(lot.lotNumber);
                               deed.whom = stored.lotNumber;
                               VarietyRepository varieties(database);
                               const Done checked = checkLot(stored).and_then(
                                   [&] { return checkStored(varieties, stored); });
                               if (!checked) {
                                   return passOn(checked);
                               }
                               if (isNew) {
                                   varieties.insert(stored);
                               } else {
                                   varieties.update(stored);
                               }
                               return stored;
                           });
}

Done VarietyEntries::removeLot(SeedLotId lot)
{
    return m_ledger.record(Intention::RemoveSeedLot, [&](Database& database, Deed& deed) -> Done {
        VarietyRepository varieties(database);
        const auto found = varieties.find(lot);
        if (!found) {
            return fail(ErrorKind::NotFound, VarietyReason::LotUnknown);
        }
        deed.whom = found->lotNumber;
        if (varieties.isInUse(lot)) {
            return fail(ErrorKind::InUse, VarietyReason::LotInUse, found->lotNumber);
        }
        varieties.remove(lot);
        return {};
    });
}

Result<StockCorrection> VarietyEntries::countLot(SeedLotId lot, Mass found,
                                                 const std::string& reason)
{
    return m_ledger.record(Intention::CountSeedLot,
                           [&](Database& database, Deed& deed) -> Result<StockCorrection> {
                               VarietyRepository varieties(database);
                               const auto stock = varieties.stockOf(lot);
                               if (!stock) {
                                   return fail(ErrorKind::NotFound, VarietyReason::LotUnknown);
                               }
                               deed.whom = stock->lot.lotNumber;
                               if (found < Mass{}) {
                                   return fail(ErrorKind::Invalid, VarietyReason::LotFound);
                               }
                               if (!stock->left) {
                                   return fail(ErrorKind::Missing, VarietyReason::LotBoughtUnknown,
                                               stock->lot.lotNumber);
                               }
                               StockCorrection correction{
                                   {}, lot, m_ledger.clock().today(), found - *stock->left, reason};
                               varieties.insert(correction);
                               return correction;
                           });
}

} // namespace plumule
