#include "core/tasting/tasting_rules.h"

#include "core/base/enum_text.h"
#include "core/base/letter_case.h"
#include "core/base/number_text.h"
#include "core/tasting/tasting_reason.h"

#include <algorithm>
#include <map>
#include <set>

namespace plumule {
namespace {

constexpr int kHighestHedonic = 9;

std::vector<std::string> tidiedLines(const std::vector<std::string>& lines)
{
    std::vector<std::string> kept;
    for (const std::string& line : lines) {
        if (const auto text = trimmed(line); !text.empty()) {
            kept.emplace_back(text);
        }
    }
    return kept;
}

Done checkNames(const std::vector<std::string>& names, TastingReason twice)
{
    std::set<std::string> seen;
    for (const std::string& name : names) {
        if (!seen.insert(lowered(name)).second) {
            return fail(ErrorKind::Duplicate, twice, name);
        }
    }
    return {};
}

Done checkSampleCount(const PanelDraft& draft)
{
    const std::size_t count = draft.media.size();
    if (count < 2) {
        return fail(ErrorKind::TooFew, TastingReason::TooFewMedia);
    }
    if (draft.panel.method == TastingMethod::Triangle && count != 2) {
        return fail(ErrorKind::Invalid, TastingReason::TriangleMedia);
    }
    if (count > kMostSamples) {
        return fail(ErrorKind::Invalid, TastingReason::TooManyMedia, kMostSamples);
    }
    if (std::set<MediumId>(draft.media.begin(), draft.media.end()).size() < count) {
        return fail(ErrorKind::Duplicate, TastingReason::MediumTwice);
    }
    return {};
}

std::size_t servingsEach(const PanelDraft& draft)
{
    return draft.panel.method == TastingMethod::Triangle ? 3 : draft.media.size();
}

} // namespace

const char* toText(TastingMethod method)
{
    switch (method) {
    case TastingMethod::Hedonic:
        return "hedonic";
    case TastingMethod::Ranking:
        return "ranking";
    case TastingMethod::Triangle:
        return "triangle";
    }
    return "";
}

bool fromText(std::string_view text, TastingMethod& method)
{
    return matchText(
        text, std::array{TastingMethod::Hedonic, TastingMethod::Ranking, TastingMethod::Triangle},
        method);
}

PanelDraft tidied(PanelDraft draft)
{
    draft.panel.name = trimmed(draft.panel.name);
    draft.panel.note = trimmed(draft.panel.note);
    draft.tasters = tidiedLines(draft.tasters);
    draft.attributes = draft.panel.method == TastingMethod::Triangle
                           ? std::vector<std::string>{kOddOne}
                           : tidiedLines(draft.attributes);
    return draft;
}

Done checkPanel(const PanelDraft& draft)
{
    if (draft.panel.name.empty()) {
        return fail(ErrorKind::Missing, TastingReason::NameMissing);
    }
    if (const Done media = checkSampleCount(draft); !media) {
        return media;
    }
    if (draft.tasters.empty()) {
        return fail(ErrorKind::TooFew, TastingReason::NoTasters);
    }
    if (draft.attributes.empty()) {
        return fail(ErrorKind::TooFew, TastingReason::NoAttributes);
    }
    if (draft.attributes.size() > kMostAttributes) {
        return fail(ErrorKind::Invalid, TastingReason::TooManyAttributes, kMostAttributes);
    }
    if (draft.tasters.size() * servingsEach(draft) > kMostServings) {
        return fail(ErrorKind::Invalid, TastingReason::TooManyServings,
                    draft.tasters.size() * servingsEach(draft), kMostServings);
    }
    return checkNames(draft.attributes, TastingReason::AttributeTwice).and_then([&] {
        return checkNames(draft.tasters, TastingReason::TasterTwice);
    });
}

Done checkIsBlind(const PanelDraft& draft, const std::vector<std::string>& media)
{
    std::vector<std::string> shown{lowered(draft.panel.name)};
    for (const std::string& attribute : draft.attributes) {
        shown.push_back(lowered(attribute));
    }
    for (const std::string& medium : media) {
        const std::string name = lowered(medium);
        for (const std::string& text : shown) {
            if (text.find(name) != std::string::npos) {
                return fail(ErrorKind::Conflict, TastingReason::NamesAMedium, medium);
            }
        }
    }
    return {};
}

Done checkScore(TastingMethod method, std::size_t samples, int value)
{
    int highest = 1;
    if (method == TastingMethod::Hedonic) {
        highest = kHighestHedonic;
    } else if (method == TastingMethod::Ranking) {
        highest = static_cast<int>(samples);
    }
    if (value < 1 || value > highest) {
        return fail(ErrorKind::Invalid, TastingReason::ScoreRange, highest);
    }
    return {};
}

const Serving* servingWith(const PanelRecord& record, const std::string& code)
{
    const auto found = std::find_if(record.servings.begin(), record.servings.end(),
                                    [&](const Serving& serving) { return serving.code == code; });
    return found == record.servings.end() ? nullptr : &*found;
}

const Taster* tasterOf(const PanelRecord& record, const Serving& serving)
{
    const auto found = std::find_if(record.tasters.begin(), record.tasters.end(),
                                    [&](const Taster& each) { return each.id == serving.taster; });
    return found == record.tasters.end() ? nullptr : &*found;
}

const Score* scoreOf(const PanelRecord& record, ServingId serving, PanelAttributeId attribute)
{
    const auto found =
        std::find_if(record.scores.begin(), record.scores.end(), [&](const Score& score) {
            return score.serving == serving && score.attribute == attribute;
        });
    return found == record.scores.end() ? nullptr : &*found;
}

std::vector<Serving> servingsOf(const PanelRecord& record, TasterId taster)
{
    std::vector<Serving> servings;
    std::copy_if(record.servings.begin(), record.servings.end(), std::back_inserter(servings),
                 [&](const Serving& serving) { return serving.taster == taster; });
    std::sort(servings.begin(), servings.end(),
              [](const Serving& a, const Serving& b) { return a.turn < b.turn; });
    return servings;
}

std::vector<MissingScores> missingScores(const PanelRecord& record)
{
    const bool isTriangle = record.panel.method == TastingMethod::Triangle;
    std::vector<MissingScores> missing;
    for (const Taster& taster : record.tasters) {
        const auto servings = servingsOf(record, taster.id);
        for (const PanelAttribute& attribute : record.attributes) {
            MissingScores lacking{taster, attribute, {}};
            for (const Serving& serving : servings) {
                if (scoreOf(record, serving.id, attribute.id) == nullptr) {
                    lacking.codes.push_back(serving.code);
                }
            }
            const bool isNamed = isTriangle && lacking.codes.size() < servings.size();
            if (!lacking.codes.empty() && !isNamed) {
                missing.push_back(std::move(lacking));
            }
        }
    }
    return missing;
}

std::vector<RankTwice> ranksTwice(const PanelRecord& record)
{
    std::vector<RankTwice> found;
    if (record.panel.method != TastingMethod::Ranking) {
        return found;
    }
    for (const Taster& taster : record.tasters) {
        for (const PanelAttribute& attribute : record.attributes) {
            std::map<int, std::vector<std::string>> codesByRank;
            for (const Serving& serving : servingsOf(record, taster.id)) {
                if (const Score* score = scoreOf(record, serving.id, attribute.id)) {
                    codesByRank[score->value].push_back(serving.code);
                }
            }
            for (auto& [rank, codes] : codesByRank) {
                if (codes.size() > 1) {
                    found.push_back({taster, attribute, rank, std::move(codes)});
                }
            }
        }
    }
    return found;
}

int scoresWanted(const PanelRecord& record)
{
    return static_cast<int>(record.panel.method == TastingMethod::Triangle
                                ? record.tasters.size()
                                : record.servings.size() * record.attributes.size());
}

} // namespace plumule
