#include "core/journal/medium/medium_entries.h"
#include "core/journal/room/room_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "core/journal/watering/watering_entries.h"
#include "tests/core/storage/scratch.h"
#include "tests/soak/soak_room.h"
#include "tests/soak/soak_script.h"
#include "tests/soak/soak_times.h"

#include <fmt/format.h>
#include <fstream>
#include <map>

namespace plumule {
namespace {

namespace fs = std::filesystem;

// What happens to a file that rots, or that someone meddles with.
enum class Decay
{
    OneByte,
    SomeBytes,
    ZeroedRun,
    PagesSwapped,
    CutShort,
    Header,
    Log // beside a file that is as it was
};
constexpr std::pair<Decay, const char*> kDecays[] = {
    {Decay::OneByte, "one byte"},
    {Decay::SomeBytes, "some bytes"},
    {Decay::ZeroedRun, "a zeroed run"},
    {Decay::PagesSwapped, "two pages swapped"},
    {Decay::CutShort, "cut short"},
    {Decay::Header, "the header"},
    {Decay::Log, "the log"},
};
constexpr std::size_t kPage = 4096;

std::string bytesOfFile(const fs::path& path)
{
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
}

void putBytes(const fs::path& path, const std::string& bytes)
{
    std::ofstream(path, std::ios::binary | std::ios::trunc) << bytes;
}

void alterByte(std::string& bytes, std::size_t within, std::mt19937& lot)
{
    bytes[lot() % within] ^= static_cast<char>(1 + lot() % 255);
}

std::string decayed(std::string bytes, Decay decay, std::mt19937& lot)
{
    const std::size_t size = bytes.size();
    switch (decay) {
    case Decay::OneByte:
    case Decay::Log:
        alterByte(bytes, size, lot);
        break;
    case Decay::SomeBytes:
        for (int i = 0; i < 40; ++i) {
            alterByte(bytes, size, lot);
        }
        break;
    case Decay::ZeroedRun: {
        const std::size_t from = lot() % size;
        const std::size_t length = std::min<std::size_t>(1 + lot() % 600, size - from);
        std::fill_n(bytes.begin() + static_cast<std::ptrdiff_t>(from), length, '\0');
        break;
    }
    case Decay::PagesSwapped: {
        const std::size_t one = lot() % (size / kPage) * kPage;
        const std::size_t other = lot() % (size / kPage) * kPage;
        std::swap_ranges(bytes.begin() + static_cast<std::ptrdiff_t>(one),
                         bytes.begin() + static_cast<std::ptrdiff_t>(one + kPage),
                         bytes.begin() + static_cast<std::ptrdiff_t>(one == other ? 0 : other));
        break;
    }
    case Decay::CutShort:
        bytes.resize(lot() % size);
        break;
    case Decay::Header:
        alterByte(bytes, 100, lot);
        break;
    }
    return bytes;
}

enum class Answer
{
    Answered = 40,
    SomeRefused, // opened; some of what was asked was refused
    Refused,     // to open it
    Crashed,
    Hung
};

// All that the window asks of a journal at its start and then of its pages. Runs elsewhere.
Answer askEverything(const fs::path& path, const Clock& clock)
{
    auto opened = Journal::open(path, clock);
    if (!opened) {
        return Answer::Refused;
    }
    Journal& journal = **opened;
    bool isWhole = true;
    const auto ask = [&](const auto& answer) {
        isWhole = isWhole && answer.has_value();
        return answer.has_value();
    };
    if (const auto faults = journal.faults(); ask(faults)) {
        isWhole = isWhole && faults->empty();
    }
    ask(journal.watering().roundNow());
    ask(journal.room().layout());
    ask(journal.varieties().all());
    ask(journal.media().pieces());
    if (const auto trays = journal.trays().list({}); ask(trays)) {
        for (std::size_t i = 0; i < trays->size(); i += 5) {
            ask(journal.trays().sheet((*trays)[i].record.tray.id));
        }
    }
    if (const auto entries = journal.latestEntries(10); ask(entries)) {
        for (const HistoryEntry& entry : *entries) {
            (void)journal.foreseeUndo(entry.id); // may well be refused
        }
    }
    ask(journal.undo());
    ask(journal.redo());
    return isWhole ? Answer::Answered : Answer::SomeRefused;
}

Answer answerElsewhere(const fs::path& path, const Clock& clock)
{
    constexpr unsigned kLongest = 20; // seconds
    const pid_t child = ::fork();
    if (child == 0) {
        ::alarm(kLongest);
        ::_exit(static_cast<int>(askEverything(path, clock)));
    }
    int status = 0;
    ::waitpid(child, &status, 0);
    if (WIFSIGNALED(status)) {
        return WTERMSIG(status) == SIGALRM ? Answer::Hung : Answer::Crashed;
    }
    const int code = WEXITSTATUS(status);
    const bool isOurs =
        code >= static_cast<int>(Answer::Answered) && code <= static_cast<int>(Answer::Refused);
    return isOurs ? static_cast<Answer>(code) : Answer::Crashed;
}

class SoakMutants : public testing::Test
{
protected:
    // Three weeks of a room in the file, two rounds of the script in a log beside it.
    SoakMutants()
    {
        {
            SoakRoom room(path, {date(2026, 2, 9), 6 * 60});
            room.runDays(21);
            room.compare();
        }
        file = bytesOfFile(path);
        EXPECT_TRUE(doneByAProgramThatEnds([&] {
            const auto* opened = new auto(Journal::open(path, clock)); // never closed
            for (int step = 0; step < 2 * kStepsOfScript; ++step) {
                if (!*opened || !doStep(***opened, step)) {
                    return false;
                }
            }
            return true;
        }));
        log = bytesOfFile(path.string() + "-wal");
        EXPECT_FALSE(log.empty());
    }
    fs::path mutant(Decay decay, std::mt19937& lot)
    {
        const fs::path name = folder / "mutant.plumule";
        for (const char* ending : {"-wal", "-shm", "-journal"}) {
            fs::remove(name.string() + ending);
        }
        putBytes(name, decay == Decay::Log ? file : decayed(file, decay, lot));
        if (decay == Decay::Log) {
            putBytes(name.string() + "-wal", decayed(log, decay, lot));
        }
        return name;
    }

    ScratchFolder folder;
    fs::path path = folder / "room.plumule";
    FixedClock clock{{date(2026, 3, 2), 7 * 60 + 30}};
    std::string file;
    std::string log;
};

TEST_F(SoakMutants, AreRefusedOrAnsweredAndNeverEndTheProgram)
{
    const int each = soakTimes(5, 1000);
    std::mt19937 lot(7);
    for (const auto& [decay, name] : kDecays) {
        std::map<Answer, int> answers;
        for (int i = 0; i < each; ++i) {
            const Answer answer = answerElsewhere(mutant(decay, lot), clock);
            ++answers[answer];
            if (answer == Answer::Crashed || answer == Answer::Hung) {
                ADD_FAILURE() << name << ", mutant " << i;
            }
        }
        sayFigures(
            fmt::format("{} mutants ({}): {} answered, {} in part, {} refused, {} crashed, {} hung",
                        each, name, answers[Answer::Answered], answers[Answer::SomeRefused],
                        answers[Answer::Refused], answers[Answer::Crashed], answers[Answer::Hung]));
    }
}

} // namespace
} // namespace plumule
