#pragma once

#include <QPersistentModelIndex>
#include <QPointer>
#include <QVariant>
#include <QWidget>

namespace plumule::ui {

// What a widget held at one moment: its text with the cursor and what was marked in it, its number,
// day or choice, or the row of a list that was current.
class HeldField
{
public:
    explicit HeldField(QObject* field);

    // As it was, also where the widget is gone meanwhile: then nothing.
    void giveBack() const;

private:
    QPointer<QObject> m_field;
    QVariant m_value;
    QPersistentModelIndex m_row;
    int m_cursor = 0;
    int m_markedFrom = -1;
    int m_marked = 0;
    bool m_isModified = false;
};

} // namespace plumule::ui
