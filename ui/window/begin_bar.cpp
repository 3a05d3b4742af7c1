#include "ui/window/begin_bar.h"

#include "ui/widget/flow_layout.h"

#include <QVBoxLayout>

namespace plumule::ui {

BeginBar::BeginBar(QWidget* parent)
    : Card({}, "answer", parent)
{
    setObjectName("beginBar");
    m_words = label(QString());
    m_words->setObjectName("beginWords");
    m_words->setWordWrap(true);
    auto* sow = button(tr("Sow…"), "primary");
    sow->setObjectName("beginSow");
    auto* bring = button(tr("Import a table…"));
    bring->setObjectName("beginImport");
    auto* sample = button(tr("Look round the sample room…"));
    sample->setObjectName("beginSample");
    auto* row = new FlowLayout;
    for (QPushButton* each : {sow, bring, sample}) {
        row->addWidget(each);
    }
    body()->addWidget(m_words);
    body()->addLayout(row);
    connect(sow, &QPushButton::clicked, this, &BeginBar::sowAsked);
    connect(bring, &QPushButton::clicked, this, &BeginBar::importAsked);
    connect(sample, &QPushButton::clicked, this, &BeginBar::sampleAsked);
    hide();
}

void BeginBar::say(const QString& words)
{
    m_words->setText(words);
    setVisible(!words.isEmpty());
}

} // namespace plumule::ui

#include "moc_begin_bar.cpp"
