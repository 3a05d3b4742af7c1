#include "core/base/letter_case.h"

#include <gtest/gtest.h>

namespace plumule {
namespace {

TEST(LetterCase, MakesAToZSmallAndNothingElse)
{
    EXPECT_EQ(lowered("AZaz09 [Ä]"), "azaz09 [Ä]");
    EXPECT_EQ(lowered(""), "");
    EXPECT_TRUE(isAlike("Radish ROSE", "radish rose"));
    EXPECT_FALSE(isAlike("radish", "radish "));
    EXPECT_FALSE(isAlike("@[", "`{")) << "they lie beside the letters";
    EXPECT_FALSE(isAlike("Ä", "ä")) << "as SQLite's NOCASE";
}

} // namespace
} // namespace plumule
