// Part of core/journal/tray/tray_entries.h: heights, notes and photographs.
#include "core/journal/tray/tray_entries.h"

#include "core/base/number_text.h"
#include "core/base/whole_file.h"
#include "core/journal/ledger/ledger.h"
#include "core/tray/sowing_rules.h"
#include "core/tray/tray_reason.h"
#include "core/tray/tray_repository.h"

#include <fmt/format.h>

namespace plumule {
namespace {

// Takes out one row of a tray's diary.
template <class Key>
Done removeFromDiary(Database& database, Deed& deed, Key key, TrayReason unknown)
{
    TrayRepository trays(database);
    const auto row = trays.find(key);
    if (!row) {
        return fail(ErrorKind::NotFound, unknown);
    }
    if (const auto tray = trays.find(row->tray)) {
        deed.whom = tray->code;
    }
    trays.remove(key);
    return {};
}

// The code as part of a file's name.
std::string fileNameOf(const std::string& code)
{
    std::string name = code;
    for (char& c : name) {
        const auto byte = static_cast<unsigned char>(c);
        if (byte < 0x20 || std::string_view("/\\:*?\"<>|").find(c) != std::string_view::npos) {
            c = '_';
        }
    }
    return name;
}

// Copies the picture under the first free number of that tray and day.
Result<std::filesystem::path> copyPhoto(const std::filesystem::path& file,
                                        const std::filesystem::path& folder,
                                        const std::string& code, Date day)
{
    std::error_code error;
    if (!std::filesystem::is_regular_file(file, error)) {
        return fail(ErrorKind::Unreadable, TrayReason::PhotoUnreadable, file.string());
    }
    if (const Done made = makeFolder(folder); !made) {
        return fail(made.error().kind, TrayReason::PhotoFolder, folder.string());
    }
    const std::string ending = file.extension().string();
    std::filesystem::path target;
    for (int number = 1; target.empty() || std::filesystem::exists(target, error); ++number) {
        target = folder / fmt::format("{} {} {}{}", fileNameOf(code), toIso(day), number, ending);
    }
    // On the disk, name and all, before the journal says that it is there.
    if (const Done copied = copyWhole(file, target, WrittenBy::TheJournal); !copied) {
        return copied.error().kind == ErrorKind::Unreadable
                   ? fail(ErrorKind::Unreadable, TrayReason::PhotoUnreadable, file.string())
                   : fail(copied.error().kind, TrayReason::PhotoNotCopied, file.string());
    }
    return target;
}

} // namespace

Result<Height> TrayEntries::noteHeight(TrayId id, Length reading, ReadFrom from, Moment at)
{
    return m_ledger.record(Intention::NoteHeight,
                           [&](Database& database, Deed& deed) -> Result<Height> {
                               TrayRepository trays(database);
                               const auto record = trays.record(id);
                               if (!record) {
                                   return fail(ErrorKind::NotFound, TrayReason::Unknown);
                               }
                               Height height{{}, id, at.date, at.minute, reading, from};
                               if (auto checked = checkHeight(height, record->medium); !checked) {
                                   return passOn(checked);
                               }
                               deed.whom = record->tray.code;
                               deed.with = {std::to_string(reading.count())};
                               trays.insert(height);
                               return height;
                           });
}

Result<TrayNote> TrayEntries::writeNote(TrayId id, const std::string& text, Moment at)
{
    return m_ledger.record(
        Intention::WriteNote, [&](Database& database, Deed& deed) -> Result<TrayNote> {
            if (trimmed(text).empty()) {
                return fail(ErrorKind::Missing, TrayReason::NoteMissing);
            }
            TrayRepository trays(database);
            const auto tray = trays.find(id);
            if (!tray) {
                return fail(ErrorKind::NotFound, TrayReason::Unknown);
            }
            deed.whom = tray->code;
            TrayNote note{{}, id, at.date, at.minute, std::string(trimmed(text))};
            trays.insert(note);
            return note;
        });
}

Done TrayEntries::removeNote(TrayNoteId note)
{
    return m_ledger.record(Intention::RemoveNote, [&](Database& database, Deed& deed) {
        return removeFromDiary(database, deed, note, TrayReason::NoteUnknown);
    });
}

Result<Photo> TrayEntries::attachPhoto(TrayId id, const std::filesystem::path& file,
                                       const std::string& caption, Moment at)
{
    std::filesystem::path copied;
    auto photo = m_ledger.record(
        Intention::AttachPhoto, [&](Database& database, Deed& deed) -> Result<Photo> {
            TrayRepository trays(database);
            const auto tray = trays.find(id);
            if (!tray) {
                return fail(ErrorKind::NotFound, TrayReason::Unknown);
            }
            const auto target = copyPhoto(file, m_ledger.photoFolder(), tray->code, at.date);
            if (!target) {
                return passOn(target);
            }
            copied = *target;
            deed.whom = tray->code;
            Photo row{{}, id, at.date, at.minute, copied.filename().string(), caption};
            trays.insert(row);
            return row;
        });
    if (!photo && !copied.empty()) {
        std::error_code ignored;
        std::filesystem::remove(copied, ignored);
    }
    return photo;
}

Done TrayEntries::removePhoto(PhotoId photo)
{
    return m_ledger.record(Intention::RemovePhoto, [&](Database& database, Deed& deed) {
        return removeFromDiary(database, deed, photo, TrayReason::PhotoUnknown);
    });
}

} // namespace plumule
