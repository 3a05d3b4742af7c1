#pragma once

#include "core/tray/tray_list_row.h"
#include "ui/text/text.h"
#include "ui/widget/rows_model.h"

#include <QCoreApplication>

namespace plumule::ui {

// The trays of the list, as the journal gave them: the first page, and more when one scrolls to
// where it ends.
class TrayListModel : public RowsModel<TrayListRow>
{
    Q_DECLARE_TR_FUNCTIONS(TrayListModel)

public:
    enum Column
    {
        Code,
        VarietyName,
        MediumName,
        Place,
        StageNow,
        Day,
        Harvest,
        Yield,
        TrialCode,
        Columns
    };

    // The listing behind that tray; none where it can't be read.
    using ReadOn = std::function<std::optional<TrayListing>(const TrayListKey& after)>;

    explicit TrayListModel(QObject* parent = nullptr);

    void setReadOn(ReadOn readOn) { m_readOn = std::move(readOn); }
    void show(TrayListing listing, UnitText units, Date today);

    [[nodiscard]] bool canFetchMore(const QModelIndex& parent) const override;
    void fetchMore(const QModelIndex& parent) override;

private:
    static void addNames(std::vector<RowColumn<TrayListRow>>& columns);
    [[nodiscard]] static std::vector<RowColumn<TrayListRow>> columnsIn(UnitText units, Date today);

    ReadOn m_readOn;
    bool m_hasMore = false;
};

// "in light", "harvested", "discarded": what a tray is doing.
[[nodiscard]] QString doingText(const Tray& tray, const StagePlan& plan);

} // namespace plumule::ui
