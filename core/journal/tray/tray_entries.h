#pragma once

#include "core/journal/tray/tray_sheet.h"
#include "core/storage/history_entry.h"
#include "core/tray/tray_list_row.h"

#include <filesystem>

namespace plumule {

class Ledger;

// Sowing, moving on, moving about, and what is written down about a tray.
class TrayEntries
{
public:
    explicit TrayEntries(Ledger& ledger)
        : m_ledger(ledger)
    {}

    // Newest sowing first, then by code.
    [[nodiscard]] Result<std::vector<TrayListRow>> list(const TrayFilter& filter);
    // A page of the same, without trays of which a row can't be read; they are named.
    [[nodiscard]] Result<TrayListing> listing(const TrayFilter& filter, const TrayPage& page = {});
    [[nodiscard]] Result<TrayCounts> counts(const TrayFilter& filter);
    // Of those the growing ones, in the same order.
    [[nodiscard]] Result<std::vector<TrayId>> growingIn(const TrayFilter& filter);
    // Whether there is a tray in that state; false too where that can't be read.
    [[nodiscard]] bool hasAny(TrayState state);
    [[nodiscard]] Result<TraySheet> sheet(TrayId tray);
    // Letter case and blanks around do not matter. NotFound.
    [[nodiscard]] Result<TrayId> find(const std::string& code);
    // Which of the journal's newest `count` acts changed the tray or something of it: where it
    // stood, its water, its weights.
    [[nodiscard]] Result<std::set<HistoryId>> actsOn(TrayId tray, int count);
    // The code that the next tray of this variety gets.
    [[nodiscard]] Result<std::string> nextCode(VarietyId variety);

    // Sows one tray or many. Conflict where a place is taken or given twice, or a piece in use,
    // retired or not sanitised; Invalid where pieces and count differ; Duplicate code; Missing
    // protocol.
    Result<std::vector<TrayId>> sow(const SowingDraft& draft);

    // Begins the next stage; Conflict when there is none left but the harvest, or the tray has
    // ended.
    Done moveOn(TrayId tray, Moment at);
    // All of them, as one act, or none.
    Done moveOn(const std::vector<TrayId>& trays, Moment at);
    // "Not yet": the next stage, or the harvest, and all after it come later by these minutes,
    // counted from when it is due, or from the present round where it has been due since before.
    // Invalid under 1.
    Done notYet(TrayId tray, int minutes);
    Done notYet(const std::vector<TrayId>& trays, int minutes);
    // Corrects when a stage began; Invalid where it would be before the one before it or after the
    // one after it.
    Done correctStart(TrayId tray, Stage stage, Moment at);
    // Missing reason.
    Done discard(TrayId tray, const std::string& reason, Moment at);
    // Conflict where the place is taken. None: off the racks.
    Done moveTo(TrayId tray, std::optional<PlaceId> place, Moment at);
    // Left out of reviews, with the reason; none: counted again.
    Done setAside(TrayId tray, std::optional<std::string> reason);

    // Invalid beyond 0 to 1 m, or a rim reading more than the medium's depth below the rim.
    Result<Height> noteHeight(TrayId tray, Length reading, ReadFrom from, Moment at);
    Result<TrayNote> writeNote(TrayId tray, const std::string& text, Moment at);
    Done removeNote(TrayNoteId note);
    // Copies the file into the photo folder, named by code, day and number, and onto the
    // disk. Unreadable, NotWritable, DiskFull.
    Result<Photo> attachPhoto(TrayId tray, const std::filesystem::path& file,
                              const std::string& caption, Moment at);
    // The file stays, so that undo finds it.
    Done removePhoto(PhotoId photo);

private:
    Ledger& m_ledger;
};

} // namespace plumule
