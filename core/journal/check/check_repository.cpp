#include "core/journal/check/check_repository.h"

#include "core/journal/check/check_reason.h"
#include "core/journal/check/stored_words.h"
#include "core/medium/medium_rules.h"
#include "core/storage/faults.h"

namespace plumule {
namespace {

// A row for each that is at fault: its id, then the reason's values.
struct Question
{
    CheckReason reason;
    const char* table;
    const char* sql;
};

constexpr Question kQuestions[] = {
    {CheckReason::StayEndsBeforeIt, "stay",
     "SELECT s.id, t.code, s.from_on, s.to_on FROM stay s JOIN tray t ON t.id = s.tray_id WHERE "
     "s.to_on < s.from_on OR (s.to_on = s.from_on AND s.to_minute < s.from_minute)"},
    {CheckReason::BeforeSowing, "harvest",
     "SELECT h.id, t.code, h.on_date, t.sown_on FROM harvest h JOIN tray t ON t.id = h.tray_id "
     "WHERE h.on_date < t.sown_on"},
    {CheckReason::BeforeSowing, "residue",
     "SELECT r.id, t.code, r.on_date, t.sown_on FROM residue r JOIN tray t ON t.id = r.tray_id "
     "WHERE r.on_date < t.sown_on"},
    {CheckReason::BeforeSowing, "tray",
     "SELECT id, code, ended_on, sown_on FROM tray WHERE ended_on < sown_on"},
    {CheckReason::EndUnknown, "tray",
     "SELECT id, code FROM tray WHERE state <> 'growing' AND ended_on IS NULL"},
    {CheckReason::GrowsThoughEnded, "tray",
     "SELECT id, code FROM tray WHERE state = 'growing' AND ended_on IS NOT NULL"},
    {CheckReason::PieceOfOtherMedium, "tray",
     "SELECT t.id, t.code FROM tray t JOIN piece p ON p.id = t.piece_id WHERE p.medium_id <> "
     "t.medium_id"},
    {CheckReason::LotOfOtherVariety, "tray",
     "SELECT t.id, t.code FROM tray t JOIN seed_lot l ON l.id = t.seed_lot_id WHERE l.variety_id "
     "<> t.variety_id"},
    {CheckReason::ServingOfOtherTasting, "serving",
     "SELECT v.id, p.name FROM serving v JOIN panel p ON p.id = v.panel_id "
     "JOIN taster t ON t.id = v.taster_id JOIN panel_sample s ON s.id = v.sample_id "
     "WHERE t.panel_id <> v.panel_id OR s.panel_id <> v.panel_id"},
    {CheckReason::ScoreOfOtherTasting, "score",
     "SELECT s.id, p.name FROM score s JOIN serving v ON v.id = s.serving_id "
     "JOIN panel p ON p.id = v.panel_id JOIN panel_attribute a ON a.id = s.attribute_id "
     "WHERE a.panel_id <> v.panel_id"},
    {CheckReason::NetIsNotItsBowls, "harvest",
     "SELECT h.id, t.code FROM harvest h JOIN tray t ON t.id = h.tray_id "
     "JOIN (SELECT harvest_id, sum(gross_mg - tare_mg) AS net FROM bowl GROUP BY harvest_id) b "
     "ON b.harvest_id = h.id WHERE b.net <> h.net_mg"},
    {CheckReason::NoRoom, "room", "SELECT 0 WHERE (SELECT count(*) FROM room) <> 1"},
};

} // namespace

std::vector<Error> CheckRepository::unknownWords()
{
    std::vector<Error> found;
    for (const WordColumn& each : wordColumns()) {
        Statement rows = m_database.prepare(std::string("SELECT id, ") + each.column + " FROM " +
                                            each.table + " WHERE " + each.column + " IS NOT NULL");
        while (rows.step()) {
            const Cell cell = rows.cellAt(1);
            const auto* text = std::get_if<std::string>(&cell);
            if (text != nullptr && !each.isWord(*text)) {
                found.push_back(foundAt(each.table, rows.get<std::int64_t>(0),
                                        FaultReason::CellWord, std::string(each.column),
                                        shownCell(cell)));
            }
        }
    }
    Statement markers =
        m_database.prepare("SELECT id, marker FROM medium WHERE marker < 0 OR marker >= ?1");
    markers.bind(kMarkers);
    while (markers.step()) {
        found.push_back(foundAt("medium", markers.get<std::int64_t>(0), FaultReason::CellValue,
                                std::string("marker"), shownCell(markers.cellAt(1))));
    }
    return found;
}

std::vector<Error> CheckRepository::contradictions()
{
    std::vector<Error> found;
    for (const Question& question : kQuestions) {
        Statement rows = m_database.prepare(question.sql);
        while (rows.step()) {
            Error error = foundAt(question.table, rows.get<std::int64_t>(0), question.reason);
            for (int column = 1; column < rows.columns(); ++column) {
                error.values.push_back(rows.get<std::string>(column));
            }
            found.push_back(std::move(error));
        }
    }
    return found;
}

} // namespace plumule
