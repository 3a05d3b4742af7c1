// Part of core/medium/medium_repository.h: when and how pieces were sanitised.
#include "core/medium/medium_repository.h"

#include "core/storage/table.h"

#include <map>

namespace plumule {

// A row of a sanitising, whose further columns came later.
struct StoredSanitising
{
    SanitisingId id;
    PieceId piece;
    Date on;
    int minute = 0;
    std::string method;
};

template <>
struct TableOf<StoredSanitising>
{
    static constexpr const char* name = "sanitising";
    static constexpr auto columns = std::tuple{
        column("piece_id", &StoredSanitising::piece), column("on_date", &StoredSanitising::on),
        column("minute", &StoredSanitising::minute), column("method", &StoredSanitising::method)};
};

struct SanitisingDetail
{
    Id<SanitisingDetail> id;
    SanitisingId sanitising;
    std::optional<double> strength;
    StrengthUnit strengthUnit = StrengthUnit::Percent;
    std::optional<int> contactMinutes;
    std::string by;
};

template <>
struct TableOf<SanitisingDetail>
{
    static constexpr const char* name = "sanitising_detail";
    static constexpr auto columns =
        std::tuple{column("sanitising_id", &SanitisingDetail::sanitising),
                   column("strength", &SanitisingDetail::strength),
                   column("strength_unit", &SanitisingDetail::strengthUnit),
                   column("contact_minutes", &SanitisingDetail::contactMinutes),
                   column("done_by", &SanitisingDetail::by)};
};

void MediumRepository::insert(Sanitising& sanitising)
{
    const SanitisingDraft& how = sanitising.how;
    StoredSanitising stored{sanitising.id, sanitising.piece, sanitising.on, sanitising.minute,
                            how.method};
    insertRow(m_database, stored);
    sanitising.id = stored.id;
    if (how.strength || how.contactMinutes || !how.by.empty()) {
        SanitisingDetail detail{
            {}, sanitising.id, how.strength, how.strengthUnit, how.contactMinutes, how.by};
        insertRow(m_database, detail);
    }
}

std::vector<Sanitising> MediumRepository::sanitisings(std::optional<PieceId> piece)
{
    std::map<SanitisingId, SanitisingDetail> details;
    for (SanitisingDetail& detail : selectRows<SanitisingDetail>(
             m_database,
             piece ? "WHERE sanitising_id IN (SELECT id FROM sanitising WHERE piece_id = ?1)"
                   : "WHERE ?1 IS NULL",
             piece)) {
        const SanitisingId id = detail.sanitising;
        details.insert_or_assign(id, std::move(detail));
    }
    std::vector<Sanitising> all;
    for (StoredSanitising& row :
         selectRows<StoredSanitising>(m_database,
                                      piece ? "WHERE piece_id = ?1 ORDER BY on_date, minute, id"
                                            : "WHERE ?1 IS NULL ORDER BY on_date, minute, id",
                                      piece)) {
        Sanitising one{row.id, row.piece, row.on, row.minute, {std::move(row.method)}};
        if (const auto found = details.find(row.id); found != details.end()) {
            const SanitisingDetail& detail = found->second;
            one.how.strength = detail.strength;
            one.how.strengthUnit = detail.strengthUnit;
            one.how.contactMinutes = detail.contactMinutes;
            one.how.by = detail.by;
        }
        all.push_back(std::move(one));
    }
    return all;
}

} // namespace plumule
