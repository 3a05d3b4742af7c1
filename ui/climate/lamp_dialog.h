#pragma once

#include "ui/page/form_dialog.h"
#include "ui/page/page.h"

namespace plumule::ui {

class NumberField;

// The light that was measured under the lamps of each shelf: with the hours that they burn it gives
// a day's light where no logger measures it.
class LampDialog : public FormDialog
{
    Q_OBJECT

public:
    LampDialog(Journal& journal, Services services, QWidget* parent = nullptr);

private:
    struct ShelfField
    {
        ShelfId shelf;
        std::optional<double> before;
        NumberField* ppfd = nullptr;
    };

    void buildFields();
    void save();

    Journal& m_journal;
    Services m_services;
    std::vector<ShelfField> m_fields;
};

} // namespace plumule::ui
