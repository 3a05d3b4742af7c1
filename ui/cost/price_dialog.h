#pragma once

#include "ui/page/record_dialog.h"

namespace plumule::ui {

class PriceFields;

// A new price of one thing, over what it has cost so far. A price from the same day is changed.
class PriceDialog : public RecordDialog
{
    Q_OBJECT

public:
    // Without an item what is priced is chosen there.
    PriceDialog(Journal& journal, Services services, std::optional<PriceItem> item,
                std::optional<MediumId> medium, QWidget* parent);

protected:
    [[nodiscard]] std::optional<QString> save() override;

private:
    void showHistory(PriceItem item, std::optional<MediumId> medium, const Room& room);

    PriceFields* m_fields = nullptr;
};

} // namespace plumule::ui
