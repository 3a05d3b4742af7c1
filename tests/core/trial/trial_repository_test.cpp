#include "core/trial/trial_repository.h"

#include "tests/core/storage/store_fixture.h"

namespace plumule {
namespace {

class TrialRepositoryTest : public StoreTest
{
protected:
    Trial storeTrial(const std::string& code, std::optional<Date> startedOn)
    {
        Trial trial;
        trial.code = code;
        trial.name = code;
        trial.startedOn = startedOn;
        trials.insert(trial);
        return trial;
    }

    TrialRepository trials{database};
};

TEST_F(TrialRepositoryTest, KeepsATrialExactly)
{
    Trial trial = storeTrial("T1", std::nullopt);
    EXPECT_EQ(trials.find(trial.id), trial);
    database.execute("INSERT INTO medium VALUES (5, 'Felt', 'mat', 0, 0, NULL, NULL, NULL, 0, '', "
                     "'', 0)");
    trial.question = "Does mesh yield more?";
    trial.margin = grams(20);
    trial.control = MediumId{5};
    trial.startedOn = date(2026, 2, 1);
    trial.note = "invented";
    trials.update(trial);
    EXPECT_EQ(trials.find(trial.id), trial);
    EXPECT_EQ(trials.findByCode("t1"), trial);
    EXPECT_EQ(trials.byId().at(trial.id), trial);
}

TEST_F(TrialRepositoryTest, TheNewestComesFirst)
{
    storeTrial("T1", date(2025, 5, 1));
    storeTrial("T2", date(2026, 1, 1));
    storeTrial("T3", date(2025, 9, 1));
    std::string codes;
    for (const Trial& trial : trials.all()) {
        codes += trial.code + " ";
    }
    EXPECT_EQ(codes, "T2 T3 T1 ");
}

TEST_F(TrialRepositoryTest, ATrayHoldsItsTrial)
{
    const Trial trial = storeTrial("T1", std::nullopt);
    EXPECT_FALSE(trials.isInUse(trial.id));
    database.execute("INSERT INTO variety VALUES (1, 'Cress', 'CR', NULL, '', '', 0)");
    database.execute("INSERT INTO medium VALUES (5, 'Felt', 'mat', 0, 0, NULL, NULL, NULL, 0, '', "
                     "'', 0)");
    storeTray("CR001", 1, 5, ", trial_id, sown_on, state",
              ", " + std::to_string(trial.id.value) + ", '2026-03-01', 'growing'");
    EXPECT_TRUE(trials.isInUse(trial.id));
}

} // namespace
} // namespace plumule
