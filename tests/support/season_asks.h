#pragma once

#include "core/journal/journal.h"
#include "core/journal/review/review_answers.h"

namespace plumule {

// One question at a time of a journal's season, as tests ask them.
inline Result<SeasonReview> reviewIn(Journal& journal, const SeasonFilter& filter,
                                     const WhatIf& whatIf = {})
{
    SeasonQuestion question;
    question.filter = filter;
    question.whatIf = whatIf;
    return journal.review().season(question).map(
        [](const SeasonAnswer& answer) { return answer.review; });
}

inline Result<SeasonComparison> comparisonIn(Journal& journal, const SeasonFilter& filter,
                                             const ComparisonAsk& ask, const WhatIf& whatIf = {},
                                             const Progress& progress = {})
{
    SeasonQuestion question;
    question.filter = filter;
    question.asks = {ask};
    question.whatIf = whatIf;
    return journal.review().season(question, progress).map([](const SeasonAnswer& answer) {
        return answer.comparisons.front();
    });
}

inline Result<SeasonComparison> comparisonIn(Journal& journal, const SeasonFilter& filter,
                                             Response response = Response::YieldPerTray)
{
    ComparisonAsk ask;
    ask.response = response;
    return comparisonIn(journal, filter, ask);
}

// The trial's own answer to one response.
inline Result<TrialAnswer> trialAnswerIn(Journal& journal, TrialId trial,
                                         Response response = Response::YieldPerTray)
{
    TrialQuestion question;
    question.trial = trial;
    question.asks.emplace_back().response = response;
    return journal.review().trial(question);
}

// All that can be asked beside comparisons.
inline Result<SeasonAnswer> partsIn(Journal& journal, const SeasonFilter& filter,
                                    const Progress& progress = {})
{
    SeasonQuestion question;
    question.filter = filter;
    question.parts = {SeasonPart::HeightFits, SeasonPart::Paybacks, SeasonPart::Ageing,
                      SeasonPart::Tastings, SeasonPart::Protocols};
    return journal.review().season(question, progress);
}

} // namespace plumule
