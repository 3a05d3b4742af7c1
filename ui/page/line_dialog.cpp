#include "ui/page/line_dialog.h"

#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QLineEdit>
#include <QVBoxLayout>

namespace plumule::ui {

LineDialog::LineDialog(Ask& ask, const QString& title, const QString& question,
                       const QString& preset, QWidget* parent)
    : FormDialog(ask, "lineDialog", title, parent)
{
    wish({scaled(460), 0});
    leaveFreely();
    auto* words = label(question);
    words->setWordWrap(true);
    m_field = new QLineEdit(preset);
    m_field->setObjectName("line");
    m_field->setAccessibleName(question);
    m_field->selectAll();
    body()->addWidget(words);
    body()->addWidget(m_field);
    body()->addStretch(1);
    addCancel();
    connect(addButton(title, "lineAnswer", "primary"), &QPushButton::clicked, this,
            &LineDialog::answer);
    m_field->setFocus();
}

void LineDialog::answer()
{
    const QString text = m_field->text().trimmed();
    if (text.isEmpty()) {
        refuse(tr("Nothing is written yet."));
        m_field->setFocus();
        return;
    }
    accept();
    Q_EMIT answered(text);
}

} // namespace plumule::ui

#include "moc_line_dialog.cpp"
