#include "core/journal/merge/coming_back.h"

#include "core/backup/photo_list.h"
#include "core/journal/ledger/ledger.h"
#include "core/journal/merge/merge_planner.h"
#include "core/storage/cell_bounds.h"
#include "core/tray/tray_reason.h"
#include "core/tray/tray_repository.h"

#include <algorithm>

namespace plumule {
namespace {

namespace fs = std::filesystem;

// Of one length that a note may have.
std::vector<std::string> piecesOf(const std::string& text)
{
    const std::size_t most = longestText("text");
    std::vector<std::string> pieces;
    for (std::size_t from = 0; from < text.size();) {
        std::size_t to = std::min(text.size(), from + most);
        while (to < text.size() && (static_cast<unsigned char>(text[to]) & 0xC0U) == 0x80U) {
            --to; // within a letter
        }
        pieces.push_back(text.substr(from, to - from));
        from = to;
    }
    return pieces;
}

bool isSamePlan(const MergePlan& a, const MergePlan& b)
{
    return std::equal(a.items.begin(), a.items.end(), b.items.begin(), b.items.end(),
                      [](const MergeItem& x, const MergeItem& y) {
                          return x.families == y.families && x.rows.size() == y.rows.size() &&
                                 std::equal(x.rows.begin(), x.rows.end(), y.rows.begin(),
                                            [](const MergeRow& p, const MergeRow& q) {
                                                return p.key == q.key && p.here == q.here &&
                                                       p.there == q.there;
                                            });
                      });
}

Choices choicesOf(const MergePlan& plan)
{
    Choices choices;
    for (const MergeItem& item : plan.items) {
        for (const Family& family : item.families) {
            if (item.chosen) {
                choices[family] = *item.chosen;
            }
        }
    }
    return choices;
}

int standingActs(const std::vector<ActSince>& acts)
{
    return static_cast<int>(std::count_if(acts.begin(), acts.end(), [](const ActSince& act) {
        return act.state == HistoryState::Standing;
    }));
}

} // namespace

ComingBack::ComingBack(Ledger& ledger, CopyFile copy)
    : m_ledger(ledger)
    , m_copy(std::move(copy))
    , m_sides(ledger.database(), *m_copy.file.database, m_copy.copy)
{}

fs::path ComingBack::photosThere() const
{
    return photoFolderOf(m_copy.file.database->path());
}

bool ComingBack::isPhotoTaken(const std::string& name) const
{
    std::error_code ignored;
    const fs::path here = m_ledger.photoFolder() / name;
    return isPlainFileName(name) && fs::exists(here, ignored) &&
           photoKeyOf(here).value_or("") != photoKeyOf(photosThere() / name).value_or("");
}

Done ComingBack::read()
{
    return m_ledger.ask([&](Database&) -> Done {
        return m_sides.read([this](const std::string& name) { return isPhotoTaken(name); });
    });
}

Result<MergePlan> ComingBack::plan(const Choices& choices)
{
    // No ask(): the planner tries its plan in a transaction of its own.
    try {
        return MergePlanner(m_ledger.database(), m_sides).plan(m_copy.copy, choices);
    } catch (const StorageFailure& failure) {
        return passOn(failure.error());
    }
}

// New names of photographs that come along, with the files that they are of.
std::vector<ComingBack::PhotoFile>
ComingBack::photosOf(const std::map<RowKey, RowState>& outcome) const
{
    std::vector<PhotoFile> photos;
    const auto place = placeOfColumn(m_ledger.database(), "photo", "file_name");
    for (const auto& [key, state] : outcome) {
        if (key.table != "photo" || !state || !place) {
            continue;
        }
        const std::string name = textIn((*state)[*place]);
        std::string there = name;
        for (const Renamed& renamed : m_sides.renamed()) {
            there = renamed.row == key ? renamed.from : there;
        }
        if (isPlainFileName(name) && isPlainFileName(there)) {
            photos.push_back({photosThere() / there, name});
        }
    }
    return photos;
}

const std::vector<ColumnInfo>& ComingBack::columnsOf(const std::string& table) const
{
    return m_ledger.database().columnsOf(table);
}

int ComingBack::photosComing(const MergePlan& plan) const
{
    return static_cast<int>(photosOf(outcomeOf(m_ledger.database(), plan)).size());
}

Done ComingBack::bringPhotos(const std::map<RowKey, RowState>& outcome, BroughtBack& brought) const
{
    std::error_code ignored;
    for (const PhotoFile& photo : photosOf(outcome)) {
        const fs::path here = m_ledger.photoFolder() / photo.name;
        if (!fs::is_regular_file(photo.from, ignored)) {
            brought.photosMissing += fs::exists(here, ignored) ? 0 : 1;
            continue;
        }
        if (fs::exists(here, ignored)) {
            continue; // the same one, or it had been given another name
        }
        // Nothing else may be saved into this folder, not even whole files.
        std::error_code failed;
        fs::create_directories(m_ledger.photoFolder(), failed);
        fs::copy_file(photo.from, here, failed);
        if (failed || photoKeyOf(here).value_or("") != photoKeyOf(photo.from).value_or("?")) {
            fs::remove(here, ignored);
            return fail(ErrorKind::NotWritable, TrayReason::PhotoNotCopied, photo.from.string());
        }
        ++brought.photos;
    }
    return {};
}

// A tray's on the tray, all else in the act's own words.
Done ComingBack::keepWords(Database& database, const MergePlan& plan, const MergeWords& words,
                           std::vector<std::string>& details, BroughtBack& brought) const
{
    TrayRepository trays(database);
    const Moment now = m_ledger.clock().now();
    for (const MergeItem& item : plan.items) {
        std::set<std::int64_t> owners = item.trays;
        owners.insert(0);
        for (const std::int64_t owner : owners) {
            const std::string text = words(item, owner);
            if (text.empty()) {
                continue;
            }
            if (owner == 0 || !trays.find(TrayId{owner})) {
                details.push_back(text);
                continue;
            }
            for (const std::string& piece : piecesOf(text)) {
                TrayNote note{{}, TrayId{owner}, now.date, now.minute, piece};
                trays.insert(note);
                ++brought.notes;
            }
        }
    }
    return {};
}

Result<BroughtBack> ComingBack::bringTogether(const MergePlan& shown, const MergeWords& words,
                                              const BackupMade& first)
{
    if (const Done sound = verifyBackup(first.backup.file); !sound) {
        return passOn(sound);
    }
    const auto plan = this->plan(choicesOf(shown));
    if (!plan || !isSamePlan(*plan, shown)) {
        return plan ? fail(ErrorKind::ChangedSince, MergeReason::ChangedMeanwhile) : passOn(plan);
    }
    if (!plan->isReady()) {
        return plan->broken ? passOn(*plan->broken)
                            : fail(ErrorKind::Missing, MergeReason::NotAllChosen, plan->unchosen());
    }
    return m_ledger.record(
        Intention::BringCopyBack, [&](Database& database, Deed& deed) -> Result<BroughtBack> {
            BroughtBack brought;
            const auto outcome = outcomeOf(database, *plan);
            if (const Done photos = bringPhotos(outcome, brought); !photos) {
                return passOn(photos);
            }
            putRows(database, outcome);
            deed.whom = m_copy.copy.name;
            deed.with = {std::to_string(standingActs(plan->actsThere))};
            if (const Done kept = keepWords(database, *plan, words, deed.with, brought); !kept) {
                return passOn(kept);
            }
            CopiesRepository(database).insertBrought(m_copy.copy.id, m_ledger.clock().today(),
                                                     m_sides.until(), m_sides.same());
            brought.rows = static_cast<int>(outcome.size());
            brought.renamed = plan->renamed;
            return brought;
        });
}

} // namespace plumule
