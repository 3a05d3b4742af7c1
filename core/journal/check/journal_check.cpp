#include "core/journal/check/journal_check.h"

#include "core/journal/check/check_reason.h"
#include "core/journal/check/check_repository.h"
#include "core/journal/rules/standing_rules_repository.h"
#include "core/storage/faults.h"

#include <algorithm>

namespace plumule {
namespace {

// As it is found in a journal; none for a rule of what a step may change.
std::optional<CheckReason> foundAs(RuleReason rule)
{
    switch (rule) {
    case RuleReason::PlaceTaken:
        return CheckReason::TwoTraysOnAPlace;
    case RuleReason::TrayTwice:
        return CheckReason::TrayAtTwoPlaces;
    case RuleReason::EndedTrayStands:
        return CheckReason::EndedTrayStands;
    case RuleReason::PieceTaken:
        return CheckReason::TwoTraysOnAPiece;
    case RuleReason::PieceRetired:
        return CheckReason::RetiredPieceInUse;
    case RuleReason::PieceNotSanitised:
        return CheckReason::PieceNotSanitised;
    case RuleReason::NameTaken:
        return CheckReason::NameTwice;
    case RuleReason::NumberTaken:
        return CheckReason::NumberTwice;
    case RuleReason::GrowsAfterLastCut:
        return CheckReason::GrowsAfterLastCut;
    case RuleReason::NoLastCut:
        return CheckReason::NoLastCut;
    case RuleReason::StagesOutOfOrder:
        return CheckReason::StagesOutOfOrder;
    case RuleReason::TickedTwice:
        return CheckReason::TickedTwice;
    case RuleReason::PriceTwice:
        return CheckReason::PriceTwice;
    case RuleReason::MarkerTaken:
    case RuleReason::TastingStaysClosed:
    case RuleReason::TastingIsFinal:
        break;
    }
    return std::nullopt;
}

std::vector<Error> brokenRules(Database& database)
{
    std::vector<Error> found;
    for (BrokenRule& broken : StandingRulesRepository(database).brokenAnywhere()) {
        if (const auto reason = foundAs(broken.reason)) {
            Error error = fail(ErrorKind::Damaged, *reason).value();
            error.values = std::move(broken.values);
            found.push_back(std::move(error));
        }
    }
    return found;
}

template <class Ask>
void add(std::vector<Error>& all, Ask ask)
{
    try {
        for (Error& each : ask()) {
            all.push_back(std::move(each));
        }
    } catch (const StorageFailure& failure) {
        // Pages that can't be read are among the faults of the file by now.
        if (failure.error().kind != ErrorKind::Damaged || all.empty()) {
            throw;
        }
    }
}

} // namespace

std::vector<Error> checkJournal(Database& database)
{
    std::vector<Error> all = findFaults(database);
    CheckRepository rows(database);
    add(all, [&] { return rows.unknownWords(); });
    add(all, [&] { return rows.contradictions(); });
    add(all, [&] { return brokenRules(database); });
    return all;
}

} // namespace plumule
