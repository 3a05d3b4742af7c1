#pragma once

#include "core/harvest/weighing_rules.h"
#include "ui/harvest/scale_field.h"
#include "ui/text/text.h"

namespace plumule::ui {

// "266–310 g"
[[nodiscard]] QString rangeText(const ExpectedRange& range, MassUnit unit);

// What the tray should weigh, and from how many trays of what that is known: "Expected 266–310 g
// net, 19 times in 20: from 11 first cuts of pea tendril on steel mesh since 3 Jun."
[[nodiscard]] QString expectedText(const TrayAtScale& tray, Weighing what, MassUnit unit);
// The part after the colon alone, for beside a picture of it.
[[nodiscard]] QString rangeSourceText(const TrayAtScale& tray, Weighing what);

// What is asked about a weight before it is recorded.
struct QuestionText
{
    QString title;
    QString words;
};

// "3250 g is ten times what PE057 should weigh. Did you mean 325.0 g?", and what the net would be.
// The weight that was likely meant, in the unit it was likely read in.
[[nodiscard]] QString slipAnswerText(const std::vector<BowlDraft>& bowls, const Slip& slip,
                                     MassUnit unit);
[[nodiscard]] QuestionText slipText(const TrayAtScale& tray, const std::vector<BowlDraft>& bowls,
                                    const Slip& slip, MassUnit unit);
[[nodiscard]] QuestionText doubtsText(const TrayAtScale& tray, const std::vector<BowlDraft>& bowls,
                                      const std::vector<Doubt>& doubts, MassUnit unit);

// Why a tray can't be weighed.
[[nodiscard]] QString cannotWeighText(const QString& code, const Error& error);
// Why a text is no weight.
[[nodiscard]] QString noWeightText(const Error& error);

} // namespace plumule::ui
