#include "ui/setup/scanner_card.h"

#include "ui/widget/flow_layout.h"

#include <QLineEdit>

namespace plumule::ui {
namespace {

QLineEdit* markField(const char* objectName, const QString& spoken, const QString& stands)
{
    auto* field = new QLineEdit(stands);
    field->setObjectName(objectName);
    field->setAccessibleName(spoken);
    field->setPlaceholderText(ScannerCard::tr("nothing"));
    field->setMaxLength(20);
    return field;
}

} // namespace

ScannerCard::ScannerCard(Preferences& preferences, MessageBar& messages, QWidget* parent)
    : Card(tr("Label scanner on this computer"), "card", parent)
    , m_preferences(preferences)
    , m_messages(messages)
{
    auto* words =
        label(tr("A scanner that types a code and Enter or Tab needs nothing here. If yours puts "
                 "signs of "
                 "its own before or after each code, write them down; they are taken off."),
              "muted");
    words->setWordWrap(true);
    m_before = markField("scanBefore", tr("Signs before each code"),
                         preferences.get(Preference::ScanBefore).toString());
    m_after = markField("scanAfter", tr("Signs after each code"),
                        preferences.get(Preference::ScanAfter).toString());
    auto* apply = button(tr("Apply"));
    apply->setObjectName("applyScanner");
    auto* row = new FlowLayout;
    row->addWidget(label(tr("Before each code")));
    row->addWidget(m_before);
    row->addWidget(label(tr("After each code")));
    row->addWidget(m_after);
    row->addWidget(apply);
    body()->addWidget(words);
    body()->addLayout(row);
    connect(apply, &QPushButton::clicked, this, &ScannerCard::save);
    connect(m_before, &QLineEdit::returnPressed, this, &ScannerCard::save);
    connect(m_after, &QLineEdit::returnPressed, this, &ScannerCard::save);
}

void ScannerCard::save()
{
    m_preferences.set(Preference::ScanBefore, m_before->text());
    m_preferences.set(Preference::ScanAfter, m_after->text());
    m_messages.tell(tr("The scanner's signs are kept on this computer."));
}

} // namespace plumule::ui

#include "moc_scanner_card.cpp"
