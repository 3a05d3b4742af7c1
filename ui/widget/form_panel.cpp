#include "ui/widget/form_panel.h"

#include <QAbstractButton>
#include <QComboBox>
#include <QKeyEvent>
#include <QLineEdit>
#include <QListWidget>
#include <QPlainTextEdit>

namespace plumule::ui {
namespace {

QString checksOf(const QListWidget& list)
{
    QString checks;
    for (int i = 0; i < list.count(); ++i) {
        checks += QString::number(list.item(i)->checkState());
    }
    return checks;
}

// Whether the field stands in the form, or will once the layout that just took it has shown it. One
// that was hidden is on its way out, or not asked for; one in a window of its own is no part of it.
bool standsIn(const QWidget& form, const QWidget& field)
{
    for (const QWidget* each = &field; each != nullptr && each != &form;
         each = each->parentWidget()) {
        const bool wasHidden =
            each->isHidden() && each->testAttribute(Qt::WA_WState_ExplicitShowHide);
        if (wasHidden || each->isWindow()) {
            return false;
        }
    }
    return true;
}

// What every field within holds, in the order of the widgets. A spin box speaks by the line edit
// within it.
QStringList heldIn(const QWidget& form)
{
    QStringList held;
    for (const QWidget* each : form.findChildren<QWidget*>()) {
        if (!standsIn(form, *each)) {
            continue;
        }
        if (const auto* line = qobject_cast<const QLineEdit*>(each)) {
            held << line->text();
        } else if (const auto* box = qobject_cast<const QComboBox*>(each)) {
            held << box->currentText();
        } else if (const auto* text = qobject_cast<const QPlainTextEdit*>(each)) {
            held << text->toPlainText();
        } else if (const auto* list = qobject_cast<const QListWidget*>(each)) {
            held << checksOf(*list);
        } else if (const auto* button = qobject_cast<const QAbstractButton*>(each);
                   button != nullptr && button->isCheckable()) {
            held << QString::number(button->isChecked());
        }
    }
    return held;
}

} // namespace

FormPanel::FormPanel(QWidget* parent)
    : QWidget(parent)
{}

void FormPanel::settle()
{
    m_settled = heldIn(*this);
}

bool FormPanel::isChanged() const
{
    return m_settled && heldIn(*this) != *m_settled;
}

void FormPanel::keyPressEvent(QKeyEvent* event)
{
    if (event->key() != Qt::Key_Return && event->key() != Qt::Key_Enter) {
        QWidget::keyPressEvent(event);
        return;
    }
    auto* button = qobject_cast<QAbstractButton*>(focusWidget());
    if (button != nullptr && !button->isCheckable()) {
        button->click();
    } else {
        Q_EMIT entered();
    }
}

} // namespace plumule::ui

#include "moc_form_panel.cpp"
