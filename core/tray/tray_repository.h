#pragma once

#include "core/storage/column_traits.h"
#include "core/tray/tray.h"
#include "core/tray/tray_page.h"

#include <map>
#include <set>

namespace plumule {

class Database;

// Trays and what hangs on them. Bulk loads take a fixed number of queries, however many trays.
class TrayRepository
{
public:
    template <class Row>
    using ByTray = std::map<TrayId, std::vector<Row>>;

    // Trays `without` are passed over where many are read.
    explicit TrayRepository(Database& database, std::set<TrayId> without = {})
        : m_database(database)
        , m_without(std::move(without))
    {}

    // Trays alone.
    [[nodiscard]] std::optional<Tray> find(TrayId tray) const;
    // Letter case (ASCII) and blanks around do not matter.
    [[nodiscard]] std::optional<Tray> findByCode(const std::string& code) const;
    void insert(Tray& tray);
    void update(const Tray& tray);
    // Ends a growing tray and takes it off its place.
    void end(Tray& tray, TrayState state, Moment at);
    // An ended tray grows on; it stands where it stood, unless that place was taken since.
    void reopen(Tray& tray);

    // Trays with stages, names and the place they stand or last stood at; newest sowing first,
    // then by code.
    [[nodiscard]] std::vector<TrayRecord> records(const TrayFilter& filter = {}) const;
    [[nodiscard]] std::vector<TrayRecord> records(const std::vector<TrayId>& trays) const;
    [[nodiscard]] std::optional<TrayRecord> record(TrayId tray) const;
    // All that grow, soaking ones included.
    [[nodiscard]] std::vector<TrayRecord> growing() const;
    // All that grow, and those that ended on that day or later and were sown at most 120 days
    // before it; each with the place it stood at at that moment (once ended: last stood at).
    [[nodiscard]] std::vector<TrayRecord> growingAt(Moment at) const;

    // Those that the filter lets through, in the same order: a page of them, or all.
    [[nodiscard]] std::vector<TrayId> ids(const TrayFilter& filter, const TrayPage& page) const;
    [[nodiscard]] int count(const TrayFilter& filter) const;

    [[nodiscard]] bool hasAny(TrayState state) const;
    [[nodiscard]] std::vector<std::string> codes() const;
    // The highest number of a code of that prefix, which ends in no digit; letter case does not
    // matter. 0: there is none.
    [[nodiscard]] int highestNumber(const std::string& prefix) const;

    // Stages, in order.
    [[nodiscard]] std::vector<TrayStage> stages(TrayId tray) const;
    void insert(TrayStage& stage);
    void update(const TrayStage& stage);

    // Stays, oldest first.
    [[nodiscard]] std::vector<Stay> stays(TrayId tray) const;
    [[nodiscard]] ByTray<Stay> stays(const std::vector<TrayId>& trays) const;
    // Where trays stand now.
    [[nodiscard]] std::map<PlaceId, TrayId> occupied() const;
    [[nodiscard]] std::optional<TrayId> trayAt(PlaceId place) const;
    // Whether another tray stood at the place after the day of leaving, or stands there.
    [[nodiscard]] bool wasTakenSince(const Stay& left) const;
    // The stay of another tray that left the place last: after that moment, or by it.
    [[nodiscard]] std::optional<Stay> lastToLeaveAfter(PlaceId place, TrayId other,
                                                       Moment from) const;
    [[nodiscard]] std::optional<Stay> lastToLeaveBy(PlaceId place, TrayId other, Moment by) const;
    [[nodiscard]] std::optional<Stay> openStay(TrayId tray) const;
    void insert(Stay& stay);
    void update(const Stay& stay);
    // Does nothing where the tray stands nowhere.
    void closeStay(TrayId tray, Moment at);

    // Heights, notes and photos, oldest first.
    [[nodiscard]] std::vector<Height> heights(TrayId tray) const;
    [[nodiscard]] ByTray<Height> heights(const std::vector<TrayId>& trays) const;
    void insert(Height& height);

    [[nodiscard]] std::optional<TrayNote> find(TrayNoteId note) const;
    [[nodiscard]] std::vector<TrayNote> notes(TrayId tray) const;
    [[nodiscard]] ByTray<TrayNote> notes(const std::vector<TrayId>& trays) const;
    void insert(TrayNote& note);
    void remove(TrayNoteId note);

    [[nodiscard]] std::optional<Photo> find(PhotoId photo) const;
    [[nodiscard]] std::vector<Photo> photos(TrayId tray) const;
    [[nodiscard]] ByTray<Photo> photos(const std::vector<TrayId>& trays) const;
    void insert(Photo& photo);
    void remove(PhotoId photo);

private:
    std::vector<TrayRecord> load(std::string tail, std::vector<Cell> values) const;
    void addPlaces(std::vector<TrayRecord>& records, std::optional<Moment> at) const;

    Database& m_database;
    std::set<TrayId> m_without;
};

} // namespace plumule
