#include "core/base/clock.h"
#include "core/exchange/csv.h"
#include "core/journal/exchange/exchange_entries.h"
#include "core/journal/journal.h"
#include "core/journal/medium/medium_entries.h"
#include "core/journal/review/review_answers.h"
#include "core/journal/variety/variety_entries.h"

#include <benchmark/benchmark.h>

#include <filesystem>
#include <fstream>
#include <random>

namespace plumule::bench {
namespace {

namespace fs = std::filesystem;

constexpr int kTrays = 10'000;

// Ten thousand invented trays of 5 media, 4 varieties and 20 trials within one year.
void writeTrays(const fs::path& file)
{
    std::mt19937 lot(20'260'312);
    std::normal_distribution<double> spread(0, 15);
    std::ofstream out(file);
    out << "code,variety,medium,sown,seed_g,harvested,net_g,trial\n";
    const Date first = dateFromIso("2026-01-01").value();
    for (int i = 0; i < kTrays; ++i) {
        const Date sown = first + i / 30;
        const auto medium = lot() % 5;
        const auto variety = lot() % 4;
        out << csvLine(
            {"T" + std::to_string(i), "Variety " + std::to_string(variety),
             "Medium " + std::to_string(medium), toIso(sown), "30", toIso(sown + 10),
             std::to_string(200 + 10 * static_cast<int>(medium) + static_cast<int>(spread(lot))),
             "Trial " + std::to_string(i / 500)});
    }
}

// An open journal of its own in a folder that goes with it.
class BigJournal
{
public:
    BigJournal()
        : m_folder(fs::temp_directory_path() / "plumule-bench")
    {
        fs::remove_all(m_folder);
        fs::create_directories(m_folder);
        writeTrays(m_folder / "trays.csv");
        RoomPlan plan;
        plan.room.name = "Invented";
        m_journal = Journal::create(m_folder / "big.plumule", plan, m_clock).value();
        const auto preview =
            m_journal->exchange().preview((m_folder / "trays.csv").string()).value();
        isFilled = preview.isClean() && m_journal->exchange().importTrays(preview, "trays.csv");
    }
    ~BigJournal()
    {
        m_journal.reset();
        fs::remove_all(m_folder);
    }

    [[nodiscard]] Journal& journal() { return *m_journal; }
    bool isFilled = false;

private:
    FixedClock m_clock{Moment{dateFromIso("2026-12-31").value(), 430}};
    fs::path m_folder;
    std::unique_ptr<Journal> m_journal;
};

// Aimed at under 100 ms.
void SeasonReviewOfTenThousandTrays(benchmark::State& state)
{
    BigJournal big;
    if (!big.isFilled) {
        state.SkipWithError("the trays were not taken");
        return;
    }
    ReviewAnswers& review = big.journal().review();
    SeasonQuestion question;
    question.filter = review.usualSeason();
    int trays = 0;
    for (auto _ : state) {
        trays = review.season(question).value().review.trays;
    }
    state.counters["trays"] = trays;
}

// The verdict on top of it: model, adjusted means, pairs, fairness.
void SeasonComparisonOfTenThousandTrays(benchmark::State& state)
{
    BigJournal big;
    if (!big.isFilled) {
        state.SkipWithError("the trays were not taken");
        return;
    }
    ReviewAnswers& review = big.journal().review();
    SeasonQuestion question;
    question.filter = review.usualSeason();
    question.asks.emplace_back();
    int trays = 0;
    for (auto _ : state) {
        trays = review.season(question).value().comparisons.front().n;
    }
    state.counters["trays"] = trays;
}

// What the planning page asks on every keystroke; aimed at under 50 ms.
void OutlookOfAPlanFromTenThousandTrays(benchmark::State& state)
{
    BigJournal big;
    if (!big.isFilled) {
        state.SkipWithError("the trays were not taken");
        return;
    }
    TrialDraft draft;
    draft.trial.margin = grams(20);
    const auto varieties = big.journal().varieties().all().value();
    for (const Variety& variety : varieties) {
        if (variety.name == "Variety 1") {
            draft.plan.variety = variety.id;
        }
    }
    const auto media = big.journal().media().all().value();
    for (const Medium& medium : media) {
        if (medium.name.rfind("Medium ", 0) == 0 && draft.treatments.size() < 3) {
            Treatment treatment;
            treatment.position = static_cast<int>(draft.treatments.size());
            treatment.medium = medium.id;
            draft.treatments.push_back(treatment);
        }
    }
    double power = 0;
    for (auto _ : state) {
        power = big.journal().review().plan(draft).value().outlook.value().chosen.power;
    }
    state.counters["power"] = power;
}

BENCHMARK(OutlookOfAPlanFromTenThousandTrays)->Unit(benchmark::kMillisecond);
BENCHMARK(SeasonReviewOfTenThousandTrays)->Unit(benchmark::kMillisecond);
BENCHMARK(SeasonComparisonOfTenThousandTrays)->Unit(benchmark::kMillisecond);

} // namespace
} // namespace plumule::bench
