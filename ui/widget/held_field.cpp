#include "ui/widget/held_field.h"

#include <QAbstractItemView>
#include <QComboBox>
#include <QLineEdit>
#include <QMetaProperty>

namespace plumule::ui {

HeldField::HeldField(QObject* field)
    : m_field(field)
{
    if (const auto* line = qobject_cast<QLineEdit*>(field)) {
        m_value = line->text();
        m_cursor = line->cursorPosition();
        m_markedFrom = line->selectionStart();
        m_marked = line->selectionLength();
        m_isModified = line->isModified();
    } else if (const auto* list = qobject_cast<QAbstractItemView*>(field)) {
        m_row = list->currentIndex();
    } else if (const auto* box = qobject_cast<QComboBox*>(field); box && !box->isEditable()) {
        m_value = box->currentIndex();
    } else {
        m_value = field->metaObject()->userProperty().read(field);
    }
}

void HeldField::giveBack() const
{
    if (m_field == nullptr) {
        return;
    }
    if (auto* line = qobject_cast<QLineEdit*>(m_field.data())) {
        line->setText(m_value.toString());
        line->setCursorPosition(m_cursor);
        if (m_markedFrom >= 0) {
            line->setSelection(m_markedFrom, m_marked);
        }
        line->setModified(m_isModified);
    } else if (auto* list = qobject_cast<QAbstractItemView*>(m_field.data())) {
        if (list->currentIndex() != m_row) {
            list->setCurrentIndex(m_row);
        }
    } else if (auto* box = qobject_cast<QComboBox*>(m_field.data()); box && !box->isEditable()) {
        box->setCurrentIndex(m_value.toInt());
    } else if (m_value.isValid()) {
        m_field->metaObject()->userProperty().write(m_field, m_value);
    }
}

} // namespace plumule::ui
