#include "ui/tray/start_dialog.h"

#include "ui/text/text.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QDateTimeEdit>
#include <QVBoxLayout>

namespace plumule::ui {

StartDialog::StartDialog(const QString& what, Moment present, QWidget* parent)
    : QDialog(parent)
{
    setObjectName("startDialog");
    setWindowTitle(tr("When did it begin?"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(scaled(24), scaled(20), scaled(24), scaled(20));
    column->addWidget(label(tr("When did %1 really begin?").arg(what), "heading"));
    const QDateTime shown(toQDate(present.date), QTime(0, 0).addSecs(present.minute * 60), Qt::UTC);
    auto* field = new QDateTimeEdit(shown);
    field->setTimeSpec(Qt::UTC);
    field->setObjectName("startField");
    field->setDisplayFormat("ddd d MMM yyyy, HH:mm");
    column->addWidget(field);
    auto* row = new QHBoxLayout;
    row->addStretch(1);
    auto* leave = button(tr("Cancel"));
    auto* save = button(tr("Save"), "primary");
    save->setObjectName("startSave");
    save->setDefault(true);
    row->addWidget(leave);
    row->addWidget(save);
    column->addLayout(row);
    connect(leave, &QPushButton::clicked, this, &QDialog::reject);
    connect(save, &QPushButton::clicked, this, [this, field] {
        Q_EMIT chosen(fromQDate(field->date()), QTime(0, 0).secsTo(field->time()) / 60);
        accept();
    });
}

} // namespace plumule::ui

#include "moc_start_dialog.cpp"
