#include "ui/tasting/tasting_dialog.h"

#include "core/journal/medium/medium_entries.h"
#include "core/journal/tasting/tasting_entries.h"
#include "core/tasting/tasting_draw.h"
#include "ui/medium/marker.h"
#include "ui/tasting/tasting_text.h"
#include "ui/widget/check_list.h"
#include "ui/widget/choice_box.h"
#include "ui/widget/date_field.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QFormLayout>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QVBoxLayout>

#include <algorithm>

namespace plumule::ui {
namespace {

QPlainTextEdit* linesField(const char* name, const QString& spoken)
{
    auto* field = new QPlainTextEdit;
    field->setObjectName(name);
    field->setAccessibleName(spoken);
    field->setTabChangesFocus(true);
    field->setFixedHeight(scaled(112));
    return field;
}

QString linesOf(const std::vector<std::string>& lines)
{
    QStringList texts;
    for (const std::string& line : lines) {
        texts << QString::fromStdString(line);
    }
    return texts.join('\n');
}

std::vector<std::string> linesIn(const QPlainTextEdit& field)
{
    std::vector<std::string> lines;
    for (const QString& line : field.toPlainText().split('\n')) {
        lines.push_back(line.toStdString());
    }
    return lines;
}

} // namespace

TastingDialog::TastingDialog(Journal& journal, Services services, const PanelDraft& draft,
                             QWidget* parent)
    : RecordDialog(journal, services, "tastingDialog",
                   draft.panel.id.isStored() ? tr("Change the tasting") : tr("Plan a tasting"),
                   parent)
    , m_draft(draft)
{
    wish({scaled(620), scaled(680)});
    makeFields();
    buildRows();
    addSave("panelSave", tr("Draw the order and save"));
    wireSignals();
    fill();
}

void TastingDialog::makeFields()
{
    m_name = new QLineEdit;
    m_name->setObjectName("panelName");
    m_on = new DateField("panelOn");
    m_method = new QComboBox;
    m_method->setObjectName("panelMethod");
    for (const TastingMethod method :
         {TastingMethod::Hedonic, TastingMethod::Ranking, TastingMethod::Triangle}) {
        addChoice(*m_method, nameOf(method), method);
    }
    m_methodWords = label(QString(), "muted");
    m_methodWords->setWordWrap(true);
    m_methodWords->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Preferred);
    m_media = new CheckList("panelMedia");
    m_media->setAccessibleName(tr("Media"));
    m_media->setFixedHeight(scaled(158)); // four media, as most trials have
    m_attributes = linesField("panelAttributes", tr("Attributes, one a line"));
    m_tasters = linesField("panelTasters", tr("Tasters, one a line"));
    m_note = new QLineEdit;
    m_note->setObjectName("panelNote");
}

void TastingDialog::buildRows()
{
    auto* form = fieldForm();
    form->addRow(tr("Name"), m_name);
    form->addRow(tr("Day"), m_on);
    form->addRow(tr("Method"), m_method);
    form->addRow(QString(), m_methodWords);
    form->addRow(tr("Media"), m_media);
    form->addRow(tr("Attributes,\none a line"), m_attributes);
    form->addRow(tr("Tasters,\none a line"), m_tasters);
    form->addRow(tr("Note"), m_note);
    body()->addLayout(form);
    m_facts = label(QString(), "muted");
    m_facts->setObjectName("panelFacts");
    m_facts->setWordWrap(true);
    body()->addWidget(m_facts);
    auto* caution = label(tr("Ask everybody about allergies first, and serve only what you would "
                             "eat: clean, and nothing with mould. Local food rules come first."),
                          "muted");
    caution->setWordWrap(true);
    body()->addWidget(caution);
    body()->addStretch(1);
}

void TastingDialog::wireSignals()
{
    connect(m_method, &QComboBox::currentIndexChanged, this, &TastingDialog::showFacts);
    connect(m_media, &CheckList::itemChanged, this, &TastingDialog::showFacts);
    connect(m_tasters, &QPlainTextEdit::textChanged, this, &TastingDialog::showFacts);
}

void TastingDialog::fill()
{
    const QSignalBlocker quiet(m_media);
    m_name->setText(QString::fromStdString(m_draft.panel.name));
    m_on->setDate(m_draft.panel.on);
    choose(*m_method, m_draft.panel.method);
    m_note->setText(QString::fromStdString(m_draft.panel.note));
    for (const Medium& each : journal().media().all(Listed::All).value_or(std::vector<Medium>())) {
        const bool isIn = std::count(m_draft.media.begin(), m_draft.media.end(), each.id) > 0;
        if (each.isRetired && !isIn) {
            continue;
        }
        m_media->addCheck(QString::fromStdString(each.name), each.id.value, isIn,
                          markerIcon(each.marker));
    }
    const bool isTriangle = m_draft.panel.method == TastingMethod::Triangle;
    m_attributes->setPlainText(m_draft.attributes.empty() || isTriangle
                                   ? QStringList{tr("appearance"), tr("evenness"), tr("colour"),
                                                 tr("crunch"), tr("flavour")}
                                         .join('\n')
                                   : linesOf(m_draft.attributes));
    m_tasters->setPlainText(linesOf(m_draft.tasters));
    showFacts();
}

PanelDraft TastingDialog::typed() const
{
    PanelDraft draft = m_draft;
    draft.panel.name = m_name->text().toStdString();
    draft.panel.on = m_on->date().value_or(m_draft.panel.on);
    draft.panel.method = chosenOf<TastingMethod>(*m_method);
    draft.panel.note = m_note->text().toStdString();
    draft.media = m_media->checked<MediumId>();
    draft.attributes = linesIn(*m_attributes);
    draft.tasters = linesIn(*m_tasters);
    return tidied(draft);
}

void TastingDialog::showFacts()
{
    const PanelDraft draft = typed();
    const TastingMethod method = draft.panel.method;
    const bool isTriangle = method == TastingMethod::Triangle;
    m_attributes->setEnabled(!isTriangle);
    if (isTriangle) {
        m_methodWords->setText(tr("Three servings each, two of them alike: can the two media be "
                                  "told apart at all?"));
    } else if (method == TastingMethod::Ranking) {
        m_methodWords->setText(tr("Each taster puts the samples in order, 1 the best, at each "
                                  "attribute."));
    } else {
        m_methodWords->setText(tr("Each taster gives each sample 1 to 9 at each attribute."));
    }
    const int samples = static_cast<int>(draft.media.size());
    const int tasters = static_cast<int>(draft.tasters.size());
    if (samples < 2 || tasters < 1 || samples > kMostSamples) {
        m_facts->setText(tr("Tick two to nine media, and name those who taste."));
        return;
    }
    const int round = balancedTasters(method, samples);
    m_facts->setText(
        tr("%1 servings, each under a code of its own. The serving order is wholly balanced with "
           "%2 tasters or a multiple; these are %3.")
            .arg(tasters * (isTriangle ? 3 : samples))
            .arg(round)
            .arg(tasters));
}

std::optional<QString> TastingDialog::save()
{
    if (!m_on->requireDate()) {
        refuse(howToWriteADay());
        return std::nullopt;
    }
    const auto kept = journal().tastings().save(typed());
    if (!kept) {
        refuse(sentence(kept.error()));
        return std::nullopt;
    }
    Q_EMIT saved(kept->id);
    return tr("Saved the tasting %1; its orders and codes are drawn.")
        .arg(QString::fromStdString(kept->name));
}

} // namespace plumule::ui

#include "moc_tasting_dialog.cpp"
