#include "core/stats/probability/distributions.h"

#include "core/stats/probability/spread_integral.h"

#include <boost/math/distributions/non_central_t.hpp>
#include <cmath>
#include <gtest/gtest.h>

using namespace plumule::stats;

namespace {

void expectClose(double got, double expected, double relative)
{
    EXPECT_NEAR(got, expected, relative * std::abs(expected));
}

} // namespace

TEST(Distributions, HaveTailsThatMirrorTheirOtherSide)
{
    for (const double t : {-4.0, -0.3, 0.0, 1.7, 12.0}) {
        for (const double df : {0.7, 1.0, 5.5, 300.0, kInfiniteDf}) {
            EXPECT_NEAR(tUpper(-t, df) + tUpper(t, df), 1, 1e-14);
            EXPECT_NEAR(tTwoSided(t, df), tTwoSided(-t, df), 1e-16);
        }
    }
}

TEST(Distributions, TurnTheirQuantilesBackIntoProbabilities)
{
    for (const double p : {1e-9, 0.01, 0.3, 0.5, 0.95, 0.9999}) {
        EXPECT_NEAR(normalCdf(normalQuantile(p)), p, 1e-12);
        for (const double df : {0.5, 1.0, 2.0, 14.1, 1e6, kInfiniteDf}) {
            EXPECT_NEAR(tUpper(-tQuantile(p, df), df), p, 1e-11) << df;
            EXPECT_NEAR(fUpper(fQuantile(p, 3, df), 3, df), 1 - p, 1e-11) << df;
        }
        EXPECT_NEAR(chiSquareCdf(chiSquareQuantile(p, 7), 7), p, 1e-12);
    }
}

TEST(Distributions, MeetTheirLimitAtInfiniteDf)
{
    EXPECT_NEAR(tUpper(1.96, kInfiniteDf), normalUpper(1.96), 1e-16);
    EXPECT_NEAR(tUpper(1.96, 1e11), normalUpper(1.96), 1e-11);
    EXPECT_NEAR(fUpper(2.5, 4, kInfiniteDf), chiSquareUpper(10, 4), 1e-16);
    EXPECT_NEAR(fUpper(2.5, 4, 1e10), chiSquareUpper(10, 4), 1e-10);
    EXPECT_NEAR(noncentralTUpper(1.5, kInfiniteDf, 2), normalUpper(-0.5), 1e-16);
    EXPECT_NEAR(noncentralFUpper(2.5, 4, 1e9, 3), noncentralFUpper(2.5, 4, kInfiniteDf, 3), 1e-8);
}

// The noncentral t is an integral of ours, so it is held against another library's series, which is
// known to be off in the tenth decimal here and there.
TEST(Distributions, GiveNoncentralTAsItsSeriesDoes)
{
    for (const double df : {1.0, 4.0, 18.0, 200.0}) {
        for (const double shift : {0.4, 1.3, 3.0, 6.0, 25.0}) {
            for (const double t : {-1.0, 0.5, 2.0, 4.5, 27.0}) {
                const boost::math::non_central_t_distribution<double> series(df, shift);
                EXPECT_NEAR(noncentralTCdf(t, df, shift), boost::math::cdf(series, t), 5e-10)
                    << t << ' ' << df << ' ' << shift;
            }
        }
    }
}

TEST(Distributions, GiveNoncentralTWithoutShiftAsT)
{
    for (const double df : {1.0, 7.0, 90.0}) {
        for (const double t : {-30.0, -2.0, 0.3, 5.0, 60.0}) {
            expectClose(noncentralTUpper(t, df, 1e-13), tUpper(t, df), 1e-10);
        }
    }
}

TEST(Distributions, GiveNoncentralFOfOneAsTheSquareOfNoncentralT)
{
    for (const double df : {2.0, 9.0, 60.0}) {
        for (const double shift : {0.0, 0.8, 2.5}) {
            for (const double t : {0.5, 2.0, 4.0}) {
                EXPECT_NEAR(noncentralFUpper(t * t, 1, df, shift * shift),
                            noncentralTUpper(t, df, shift) + noncentralTCdf(-t, df, shift), 1e-10);
            }
        }
    }
}

// Past the largest shift a method takes another takes over: no step may show at the seam.
TEST(Distributions, GiveNoncentralTailsOfHugeShiftsWithoutAStep)
{
    for (const double df : {2.0, 20.0}) {
        for (const double share : {0.5, 0.9, 1.1, 2.0}) {
            const double t = share * 100;
            EXPECT_NEAR(noncentralTUpper(t, df, 100 - 1e-9), noncentralTUpper(t, df, 100 + 1e-9),
                        1e-9);
            EXPECT_NEAR(noncentralTUpper(-t, df, -100 + 1e-9),
                        noncentralTUpper(-t, df, -100 - 1e-9), 1e-9);
            const double below = 0.999999e9;
            const double above = 1.000001e9;
            EXPECT_NEAR(noncentralFUpper(share * below / 3, 3, df, below),
                        noncentralFUpper(share * above / 3, 3, df, above), 1e-6);
        }
    }
    EXPECT_EQ(noncentralTUpper(-3, 4, 1e9), 1);
    EXPECT_EQ(noncentralTUpper(3, 4, -1e9), 0);
    EXPECT_NEAR(noncentralFUpper(10, 3, 8, 1e18), 1, 1e-12);
    EXPECT_NEAR(noncentralFUpper(1e18, 1, plumule::stats::kInfiniteDf, 1e18), 0.5, 1e-6);
}

TEST(Distributions, GiveNoncentralFAsTheMeanOfNoncentralChiSquare)
{
    for (const double df1 : {2.0, 4.0}) {
        for (const double df2 : {3.0, 20.0, 85.0}) {
            for (const double shift : {0.5, 6.0, 40.0}) {
                for (const double f : {0.4, 2.6, 9.0}) {
                    const double byDefinition = meanOverSpread(df2, 0, [&](double s) {
                        return noncentralFUpper(f * s * s, df1, kInfiniteDf, shift);
                    });
                    EXPECT_NEAR(noncentralFUpper(f, df1, df2, shift), byDefinition, 1e-9)
                        << df1 << ' ' << df2 << ' ' << shift << ' ' << f;
                }
            }
        }
    }
}

TEST(Distributions, AnswerImpossibleArgumentsWithNaN)
{
    EXPECT_TRUE(std::isnan(tUpper(1, 0)));
    EXPECT_TRUE(std::isnan(tQuantile(1.5, 3)));
    EXPECT_TRUE(std::isnan(fUpper(1, -1, 3)));
    EXPECT_TRUE(std::isnan(fQuantile(-0.1, 2, 3)));
    EXPECT_TRUE(std::isnan(chiSquareUpper(std::nan(""), 3)));
    EXPECT_TRUE(std::isnan(noncentralFUpper(1, 2, 3, -1)));
    EXPECT_TRUE(std::isnan(noncentralTUpper(1, 3, kInfiniteDf)));
    EXPECT_TRUE(std::isnan(normalQuantile(2)));
}

TEST(Distributions, ReachTheirEnds)
{
    EXPECT_EQ(tUpper(kInfiniteDf, 3), 0);
    EXPECT_EQ(tUpper(-kInfiniteDf, 3), 1);
    EXPECT_EQ(fUpper(0, 2, 3), 1);
    EXPECT_EQ(fQuantile(1, 2, 3), kInfiniteDf);
    EXPECT_EQ(chiSquareQuantile(0, 2), 0);
    EXPECT_EQ(normalQuantile(0), -kInfiniteDf);
}

TEST(MeanOverSpread, WeighsToOneAndToTheSpreadsOwnMoments)
{
    for (const double df : {0.8, 1.0, 2.0, 7.0, 24.0, 1000.0, 1e8}) {
        EXPECT_NEAR(meanOverSpread(df, 0, [](double) { return 1.0; }), 1, 1e-12) << df;
        EXPECT_NEAR(meanOverSpread(df, 0, [](double s) { return s * s; }), 1, 1e-12) << df;
    }
    EXPECT_EQ(meanOverSpread(kInfiniteDf, 0, [](double s) { return 3 * s; }), 3);
}
