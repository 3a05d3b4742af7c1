#include "tests/core/stats/reference/reference_cases.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <exception>
#include <gtest/gtest.h>

using plumule::stats::reference::CaseCheck;
using plumule::stats::reference::handlerFor;
using plumule::stats::reference::references;

namespace {

std::vector<std::size_t> caseNumbers()
{
    std::vector<std::size_t> numbers(references().at("cases").size());
    for (std::size_t i = 0; i < numbers.size(); ++i) {
        numbers[i] = i;
    }
    return numbers;
}

// Kinds of cases that no answer of the program holds: nothing of ours is held against them. Of the
// other cases, fields of that sort are named by their handlers (notOurs).
constexpr std::array kLeftToNobody = {
    "Welch and pooled t",             // two samples: two media are a pair of the table's comparison
    "exact permutation p",            // tests by dealing out
    "Grubbs outlier critical values", // a stray value is told with its p
};

bool isLeftToNobody(const std::string& kind)
{
    return std::any_of(kLeftToNobody.begin(), kLeftToNobody.end(),
                       [&](const char* begins) { return kind.starts_with(begins); });
}

std::string caseName(const testing::TestParamInfo<std::size_t>& info)
{
    std::string name = references().at("cases").at(info.param).at("id");
    std::replace_if(
        name.begin(), name.end(), [](unsigned char c) { return std::isalnum(c) == 0; }, '_');
    return name;
}

} // namespace

class ReferenceCase : public testing::TestWithParam<std::size_t>
{};

TEST_P(ReferenceCase, AgreesInEveryField)
{
    const auto& testCase = references().at("cases").at(GetParam());
    const std::string kind = testCase.at("kind");
    if (isLeftToNobody(kind)) {
        EXPECT_EQ(handlerFor(kind), nullptr) << kind << " is answered after all";
        GTEST_SKIP() << "left to nobody: the program has no answer of the kind " << kind;
    }
    const auto handler = handlerFor(kind);
    ASSERT_NE(handler, nullptr) << "no handler covers the kind " << kind;
    CaseCheck check(testCase);
    try {
        handler(check);
    } catch (const std::exception& thrown) {
        check.fault(std::string("the handler threw: ") + thrown.what());
    }
    for (const std::string& fault : check.faults()) {
        ADD_FAILURE() << fault;
    }
}

INSTANTIATE_TEST_SUITE_P(ExpectedJson, ReferenceCase, testing::ValuesIn(caseNumbers()), caseName);

TEST(ReferenceWalk, FindsTheWholeFile)
{
    EXPECT_EQ(references().at("cases").size(), 55U);
}

TEST(ReferenceWalk, LeavesSixCasesToNobody)
{
    int left = 0;
    for (const auto& testCase : references().at("cases")) {
        left += isLeftToNobody(testCase.at("kind")) ? 1 : 0;
    }
    EXPECT_EQ(left, 6);
}

TEST(ReferenceWalk, CatchesAWrongNumberAndAFieldNobodyLookedAt)
{
    const nlohmann::json testCase = {{"id", "x"},
                                     {"tolerance", {{"default", {{"rel", 1e-9}, {"abs", 1e-12}}}}},
                                     {"expected", {{"a", 1.0}, {"b", 2.0}, {"c", nullptr}}}};
    CaseCheck check(testCase);
    check.number("/a", 1.0 + 1e-8, check.tolerance());
    check.number("/c", std::nullopt, check.tolerance());
    ASSERT_EQ(check.faults().size(), 2U);
    EXPECT_NE(check.faults()[0].find("/a: got 1.00000001"), std::string::npos);
    EXPECT_EQ(check.faults()[1], "/b was not looked at");
}

TEST(ReferenceWalk, RefusesACaseWhereNothingWasCompared)
{
    const nlohmann::json testCase = {{"id", "x"}, {"expected", {{"a", 1.0}}}};
    CaseCheck check(testCase);
    check.given("/a");
    EXPECT_EQ(check.faults(), std::vector<std::string>{"nothing was compared"});
}
