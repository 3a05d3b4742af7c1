#pragma once

#include "core/backup/backup_reason.h"
#include "core/base/bounds_reason.h"
#include "core/base/file_reason.h"
#include "core/base/result.h"
#include "core/base/text_reason.h"
#include "core/base/work_reason.h"
#include "core/climate/climate_reason.h"
#include "core/cost/cost_reason.h"
#include "core/exchange/exchange_reason.h"
#include "core/harvest/harvest_reason.h"
#include "core/journal/check/check_reason.h"
#include "core/journal/ledger/journal_reason.h"
#include "core/journal/rules/rule_reason.h"
#include "core/medium/medium_reason.h"
#include "core/merge/merge_reason.h"
#include "core/order/order_reason.h"
#include "core/review/facts/review_reason.h"
#include "core/room/room_reason.h"
#include "core/sample/sample_reason.h"
#include "core/stats/growth/curve_reason.h"
#include "core/stats/model/model_reason.h"
#include "core/stats/planning/power_reason.h"
#include "core/stats/probability/probability_reason.h"
#include "core/stats/samples/groups_reason.h"
#include "core/stock/stock_reason.h"
#include "core/storage/fault_reason.h"
#include "core/storage/rescue_reason.h"
#include "core/storage/schema_reason.h"
#include "core/storage/storage_reason.h"
#include "core/tasting/tasting_reason.h"
#include "core/tray/tray_reason.h"
#include "core/trial/trial_reason.h"
#include "core/variety/variety_reason.h"
#include "core/watering/watering_reason.h"
#include "core/week/week_reason.h"
#include "ui/text/form_reason.h"
#include "ui/text/label_reason.h"
#include "ui/text/paper_reason.h"

#include <QCoreApplication>
#include <QString>

namespace plumule::ui {

// The context of all that is said of errors.
class Errors
{
    Q_DECLARE_TR_FUNCTIONS(Errors)
};

// The values of an error as a grower reads them; empty where one is missing.
class ErrorValues
{
public:
    explicit ErrorValues(const Error& error)
        : m_values(error.values)
    {}

    [[nodiscard]] QString operator[](std::size_t index) const; // as it stands
    [[nodiscard]] int number(std::size_t index) const;
    [[nodiscard]] QString day(std::size_t index) const;    // of "2026-03-12"
    [[nodiscard]] QString moment(std::size_t index) const; // of "2026-03-12 06:50"
    [[nodiscard]] QString stage(std::size_t index) const;  // of its key

private:
    const std::vector<std::string>& m_values;
};

// A whole sentence for each reason: what is wrong, and what to do.
[[nodiscard]] QString words(FileReason reason, const Error& error);
[[nodiscard]] QString words(BoundsReason reason, const Error& error);
[[nodiscard]] QString words(SchemaReason reason, const Error& error);
[[nodiscard]] QString words(BackupReason reason, const Error& error);
[[nodiscard]] QString words(MergeReason reason, const Error& error);
[[nodiscard]] QString words(TextReason reason, const Error& error);
[[nodiscard]] QString words(WorkReason reason, const Error& error);
[[nodiscard]] QString words(StorageReason reason, const Error& error);
[[nodiscard]] QString words(FaultReason reason, const Error& error);
[[nodiscard]] QString words(RescueReason reason, const Error& error);
[[nodiscard]] QString words(CheckReason reason, const Error& error);
[[nodiscard]] QString words(JournalReason reason, const Error& error);
[[nodiscard]] QString words(RoomReason reason, const Error& error);
[[nodiscard]] QString words(VarietyReason reason, const Error& error);
[[nodiscard]] QString words(MediumReason reason, const Error& error);
[[nodiscard]] QString words(TrayReason reason, const Error& error);
[[nodiscard]] QString words(TrialReason reason, const Error& error);
[[nodiscard]] QString words(TastingReason reason, const Error& error);
[[nodiscard]] QString words(WateringReason reason, const Error& error);
[[nodiscard]] QString words(HarvestReason reason, const Error& error);
[[nodiscard]] QString words(CostReason reason, const Error& error);
[[nodiscard]] QString words(ExchangeReason reason, const Error& error);
[[nodiscard]] QString words(ClimateReason reason, const Error& error);
[[nodiscard]] QString words(WeekReason reason, const Error& error);
[[nodiscard]] QString words(OrderReason reason, const Error& error);
[[nodiscard]] QString words(StockReason reason, const Error& error);
[[nodiscard]] QString words(ReviewReason reason, const Error& error);
[[nodiscard]] QString words(SampleReason reason, const Error& error);
[[nodiscard]] QString words(RuleReason reason, const Error& error);
[[nodiscard]] QString words(stats::ProbabilityReason reason, const Error& error);
[[nodiscard]] QString words(stats::GroupsReason reason, const Error& error);
[[nodiscard]] QString words(stats::PowerReason reason, const Error& error);
[[nodiscard]] QString words(stats::CurveReason reason, const Error& error);
[[nodiscard]] QString words(stats::ModelReason reason, const Error& error);
[[nodiscard]] QString words(FormReason reason, const Error& error);
[[nodiscard]] QString words(PaperReason reason, const Error& error);
[[nodiscard]] QString words(LabelReason reason, const Error& error);

// All families of reasons, for what asks each of them.
template <template <class...> class List>
using EveryReasonFamily =
    List<FileReason, BoundsReason, SchemaReason, BackupReason, MergeReason, TextReason, WorkReason,
         StorageReason, FaultReason, RescueReason, CheckReason, JournalReason, RoomReason,
         VarietyReason, MediumReason, TrayReason, TrialReason, TastingReason, WateringReason,
         HarvestReason, CostReason, ExchangeReason, ClimateReason, WeekReason, OrderReason,
         StockReason, ReviewReason, SampleReason, RuleReason, stats::ProbabilityReason,
         stats::GroupsReason, stats::PowerReason, stats::CurveReason, stats::ModelReason,
         FormReason, PaperReason, LabelReason>;

} // namespace plumule::ui
