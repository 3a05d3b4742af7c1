#pragma once

#include "core/order/order.h"
#include "ui/page/form_dialog.h"
#include "ui/page/page.h"

namespace plumule::ui {

class CheckList;

// Which cuts went to a promise: by rule, or as the grower says.
class OrderCutsDialog : public FormDialog
{
    Q_OBJECT

public:
    OrderCutsDialog(Journal& journal, Services services, const Promise& promise,
                    const QString& variety, QWidget* parent = nullptr);

private:
    void fill();
    void finish(const Done& done);

    Journal& m_journal;
    Services m_services;
    PromiseKey m_promise;
    CheckList* m_cuts = nullptr;
};

} // namespace plumule::ui
