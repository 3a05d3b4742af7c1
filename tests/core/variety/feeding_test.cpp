#include "core/variety/feeding.h"

#include <gtest/gtest.h>

namespace plumule {
namespace {

// Words that journals hold already; that each is read back is tested with all that are stored.
TEST(Feeding, IsStoredByTheseWords)
{
    EXPECT_STREQ(toText(Feeding::AsProtocol), "as_protocol");
    EXPECT_STREQ(toText(Feeding::Nutrient), "nutrient");
    EXPECT_STREQ(toText(Feeding::NoNutrient), "no_nutrient");
}

} // namespace
} // namespace plumule
