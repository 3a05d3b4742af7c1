#pragma once

#include <string_view>

namespace plumule::stats {

// Why groups of numbers were not summed or tested. An enumerator's values stand beside it.
enum class GroupsReason
{
    TooFewValues,
    TooManyValues, // the most
    NotFinite,
    TooFewGroups,
    EmptyGroup, // its number, from 1
    NoSpread,
    AllAlike, // so that they give no ranks
    TooFewBlocks,
    TooFewTreatments,
    BlockSize, // the block's number, from 1
    NoTasters,
    RightAnswers, // the right answers, the tasters
};

constexpr std::string_view familyOf(GroupsReason)
{
    return "groups";
}

} // namespace plumule::stats
