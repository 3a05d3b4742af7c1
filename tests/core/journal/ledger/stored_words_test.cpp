#include "core/cost/cost.h"
#include "core/harvest/weighing.h"
#include "core/journal/ledger/intention.h"
#include "core/review/facts/compared_trays.h"
#include "core/storage/history.h"
#include "core/tasting/tasting.h"
#include "core/trial/trial_plan.h"
#include "tests/support/enumerators.h"

#include <gtest/gtest.h>
#include <set>

namespace plumule {
namespace {

// Whatever is stored by a word is read back by it: an enumerator that is missing in one of the two
// functions would turn rows that were just written into damaged ones.
template <class Enum>
class StoredWords : public testing::Test
{};

using StoredEnums =
    testing::Types<Slot, UnitSystem, Stage, WateringMethod, WaterKind, Feeding, MediumForm,
                   TrayState, ReadFrom, Design, TastingMethod, PriceItem, PriceMeasure, LabourKind,
                   Response, Grouping, HistoryState, Intention>;
TYPED_TEST_SUITE(StoredWords, StoredEnums);

TYPED_TEST(StoredWords, AreReadBackAndOneEach)
{
    const auto all = enumeratorsOf<TypeParam>();
    ASSERT_GE(all.size(), 2U);
    std::set<std::string> words;
    for (const auto& [value, name] : all) {
        const std::string word = toText(value);
        EXPECT_FALSE(word.empty()) << name;
        EXPECT_TRUE(words.insert(word).second) << name << " is stored as another one is";
        TypeParam read = value == all.front().first ? all.back().first : all.front().first;
        EXPECT_TRUE(fromText(word, read)) << name << " can't be read back from " << word;
        EXPECT_EQ(read, value) << name;
    }
}

TYPED_TEST(StoredWords, AreTakenAsTheyAreWrittenAlone)
{
    const TypeParam first = enumeratorsOf<TypeParam>().front().first;
    const std::string word = toText(first);
    for (const std::string& wrong :
         {std::string(), word + " ", " " + word, word.substr(1), std::string("no such word"),
          std::string(1, static_cast<char>(word[0] - 'a' + 'A')) + word.substr(1)}) {
        TypeParam read = first;
        EXPECT_FALSE(fromText(wrong, read)) << '"' << wrong << '"';
        EXPECT_EQ(read, first) << "it was changed all the same";
    }
}

TEST(Doubts, HaveAKeyEach)
{
    std::set<std::string> keys;
    for (const auto& [doubt, name] : enumeratorsOf<Doubt>()) {
        const std::string key = toText(doubt);
        EXPECT_FALSE(key.empty()) << name;
        EXPECT_TRUE(keys.insert(key).second) << name;
    }
}

} // namespace
} // namespace plumule
