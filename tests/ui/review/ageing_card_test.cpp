#include "ui/review/ageing_card.h"

#include <gtest/gtest.h>

namespace plumule::ui {
namespace {

TEST(AgeingWords, TellsAClearSlopeFromNone)
{
    PieceAgeing ageing;
    ageing.medium.name = "Steel mesh";
    ageing.trays = 38;
    ageing.pieces = 6;
    ageing.mostUses = 9;
    EXPECT_TRUE(ageingWords(ageing).contains("can't tell"));
    ageing.slope = -6.1;
    ageing.lower = -10.5;
    ageing.upper = -1.8;
    EXPECT_EQ(ageingWords(ageing).toStdString(),
              "Steel mesh yields 6.1 g a tray less with each further use (95% interval −10.5 to "
              "−1.8; 38 trays on 6 pieces, up to their use 9).");
    ageing.upper = 0.4;
    EXPECT_TRUE(ageingWords(ageing).contains("no ageing to be told"));
}

} // namespace
} // namespace plumule::ui
