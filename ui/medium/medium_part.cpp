#include "ui/medium/medium_part.h"

#include "core/journal/medium/medium_entries.h"
#include "ui/medium/marker.h"
#include "ui/text/form_reason.h"
#include "ui/widget/amount_field.h"
#include "ui/widget/choice_box.h"
#include "ui/widget/flow_layout.h"
#include "ui/widget/master_detail.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QCheckBox>
#include <QFormLayout>
#include <QListWidget>
#include <QSpinBox>
#include <QVBoxLayout>

#include <algorithm>

namespace plumule::ui {
namespace {

constexpr int kUsualUses = 20; // proposed for a new medium

} // namespace

MediumPart::MediumPart(Journal& journal, Services services, QWidget* parent)
    : RecordPart(journal, services, tr("New medium"), parent)
{
    buildForm();
    buildPieces();
}

QString MediumPart::name() const
{
    return tr("Media");
}

bool MediumPart::concerns(Concept about) const
{
    return about == Concept::Medium || about == Concept::Tray || about == Concept::Room;
}

void MediumPart::buildFields()
{
    m_name = new QLineEdit;
    m_name->setObjectName("mediumName");
    m_form = new QComboBox;
    m_form->setObjectName("mediumForm");
    for (const MediumForm form : {MediumForm::LooseMix, MediumForm::Mat, MediumForm::Mesh}) {
        addChoice(*m_form, nameOf(form), form);
    }
    m_nutrient = new QCheckBox(tr("nutrient-bearing"));
    m_nutrient->setToolTip(tr("Else it is inert."));
    m_asRun = new QCheckBox(tr("run with its own feeding"));
    m_asRun->setObjectName("mediumAsRun");
    m_asRun->setToolTip(tr("You would feed this medium so whatever it is compared with: medium and "
                           "feeding are then compared as one."));
    m_reusable = new QCheckBox(tr("washed and used again"));
    m_reusable->setObjectName("mediumReusable");
    m_uses = new QSpinBox;
    m_uses->setObjectName("mediumUses");
    m_uses->setRange(0, 1000);
    m_uses->setSpecialValueText(tr("not planned"));
    m_depth = new NumberField;
    m_depth->setPlaceholderText(tr("not measured"));
    m_amount = new NumberField;
    m_amount->setPlaceholderText(tr("of a loose mix"));
    m_marker = new QComboBox;
    m_marker->setObjectName("mediumMarker");
    m_source = new QLineEdit;
    m_note = new QLineEdit;
    m_group = new QLineEdit;
    m_group->setObjectName("mediumGroup");
    m_group->setPlaceholderText(tr("a word"));
    m_group->setToolTip(tr("Media with the same word are answered for together."));
    m_retired = new QCheckBox(tr("no longer bought"));
}

void MediumPart::buildForm()
{
    buildFields();
    QFormLayout* form = m_records->form();
    form->addRow(tr("Name"), m_name);
    form->addRow(tr("Form"), m_form);
    form->addRow(QString(), m_nutrient);
    form->addRow(QString(), m_asRun);
    form->addRow(QString(), m_reusable);
    form->addRow(tr("Planned uses of a piece"), m_uses);
    form->addRow(tr("Surface below the rim"), m_depth);
    form->addRow(tr("Amount a tray"), m_amount);
    form->addRow(tr("Colour and shape"), m_marker);
    form->addRow(tr("Source of the values"), m_source);
    form->addRow(tr("Note"), m_note);
    form->addRow(tr("Your own group"), m_group);
    form->addRow(QString(), m_retired);
    connect(m_reusable, &QCheckBox::toggled, m_uses, &QWidget::setEnabled);
}

void MediumPart::buildPieces()
{
    m_piecesCard = new Card(tr("Pieces"));
    m_pieces = new QListWidget;
    m_pieces->setObjectName("pieces");
    m_pieces->setAccessibleName(tr("Pieces"));
    m_pieces->setSelectionMode(QAbstractItemView::ExtendedSelection);
    m_pieces->setMinimumHeight(scaled(150));
    m_piecesCard->body()->addWidget(m_pieces);
    m_piecesCard->body()->addLayout(buildPieceActs());
    m_piecesCard->body()->addLayout(buildSanitising());
    auto* caution = new Card(tr("Mind"), "caution");
    auto* words =
        label(tr("Clean before you sanitise. Peroxide and chlorine burn skin and eyes: gloves and "
                 "glasses, follow the label, never mix chlorine with acids. Porous mats can't be "
                 "sanitised like hard plastic: heat them or discard them. Mould means discard."));
    words->setWordWrap(true);
    caution->body()->addWidget(words);
    m_piecesCard->body()->addWidget(caution);
    m_records->below()->addWidget(m_piecesCard);
}

QLayout* MediumPart::buildPieceActs()
{
    m_newPieces = new QSpinBox;
    m_newPieces->setObjectName("newPieces");
    m_newPieces->setAccessibleName(tr("How many pieces"));
    m_newPieces->setRange(1, 200);
    auto* add = button(tr("Add pieces"));
    add->setObjectName("addPieces");
    auto* retired = button(tr("Retire the chosen…"));
    auto* row = new FlowLayout;
    row->addWidget(m_newPieces);
    row->addWidget(add);
    row->addWidget(retired);
    connect(add, &QPushButton::clicked, this, &MediumPart::addPieces);
    connect(retired, &QPushButton::clicked, this, &MediumPart::retire);
    return row;
}

QLayout* MediumPart::buildSanitising()
{
    m_method = new QLineEdit(tr("washed, then sanitised by the label"));
    m_method->setObjectName("sanitiseMethod");
    m_method->setAccessibleName(tr("How they were sanitised"));
    auto* sanitised = button(tr("The chosen are sanitised"));
    sanitised->setObjectName("sanitise");
    m_method->setMinimumWidth(scaled(260));
    auto* row = new FlowLayout;
    row->addWidget(m_method);
    row->addWidget(sanitised);
    connect(sanitised, &QPushButton::clicked, this, &MediumPart::sanitise);
    return row;
}

void MediumPart::reload()
{
    std::vector<MasterDetail::Item> items;
    for (const Medium& each : journal().media().all(Listed::All).value_or(std::vector<Medium>())) {
        items.push_back(
            {each.id.value,
             QString::fromStdString(each.name) + (each.isRetired ? tr(" (no longer)") : QString()),
             markerIcon(each.marker)});
    }
    m_records->setItems(items);
    show(m_records->chosen());
    showPieces();
}

// Those that are free, and the medium's own.
void MediumPart::fillMarkers(const Medium& shown, const std::vector<int>& used)
{
    m_marker->clear();
    for (int marker = 0; marker < kMarkers; ++marker) {
        const bool isFree = std::find(used.begin(), used.end(), marker) == used.end();
        if (isFree || marker == shown.marker) {
            m_marker->addItem(markerIcon(marker), tr("marker %1").arg(marker + 1), marker);
        }
    }
    m_marker->setCurrentIndex(m_marker->findData(shown.marker));
}

void MediumPart::show(qint64 id)
{
    Medium medium;
    std::vector<int> used;
    for (const Medium& each : journal().media().all(Listed::All).value_or(std::vector<Medium>())) {
        used.push_back(each.marker);
        if (each.id.value == id) {
            medium = each;
        }
    }
    if (!medium.id.isStored()) {
        medium.marker = nextMarker(used);
    }
    // What is being typed stays, unless the record itself changed.
    const QString group = groupOf(medium.id);
    if (m_shown == medium && m_shownIn == room().units && m_shownGroup == group) {
        return;
    }
    m_shown = medium;
    m_shownIn = room().units;
    m_name->setText(QString::fromStdString(medium.name));
    choose(*m_form, medium.form);
    m_nutrient->setChecked(medium.isNutrientBearing);
    m_asRun->setChecked(medium.isAsRun);
    m_reusable->setChecked(medium.isReusable);
    m_uses->setEnabled(medium.isReusable);
    m_uses->setValue(medium.id.isStored() ? medium.plannedUses.value_or(0) : kUsualUses);
    showLength(*m_depth, medium.surfaceBelowRim, m_shownIn);
    showVolume(*m_amount, medium.amountPerTray, m_shownIn);
    fillMarkers(medium, used);
    m_source->setText(QString::fromStdString(medium.source));
    m_note->setText(QString::fromStdString(medium.note));
    m_shownGroup = group;
    m_group->setText(group);
    m_retired->setChecked(medium.isRetired);
    settleForm();
    showPieces();
}

QString MediumPart::groupOf(MediumId medium) const
{
    const auto groups = journal().media().groups().value_or(std::map<MediumId, std::string>());
    const auto group = groups.find(medium);
    return group == groups.end() ? QString() : QString::fromStdString(group->second);
}

void MediumPart::showPieces()
{
    m_piecesCard->setVisible(m_shown && m_shown->id.isStored() && m_shown->isReusable);
    m_pieces->clear();
    if (!m_piecesCard->isVisibleTo(this)) {
        return;
    }
    for (const PieceRecord& record :
         journal().media().pieces(m_shown->id, Listed::All).value_or(std::vector<PieceRecord>())) {
        QString state = record.piece.retiredOn   ? tr("retired")
                        : record.isInUse         ? tr("a tray grows on it")
                        : record.needsSanitising ? tr("to be sanitised")
                                                 : tr("clean");
        if (record.lastSanitised) {
            state += tr(", sanitised %1").arg(shortDayText(*record.lastSanitised));
        }
        auto* item = new QListWidgetItem(tr("Piece %1:  %n use(s), %2", nullptr, record.uses)
                                             .arg(record.piece.number)
                                             .arg(state),
                                         m_pieces);
        item->setData(Qt::UserRole, static_cast<qlonglong>(record.piece.id.value));
        if (record.needsSanitising && !record.piece.retiredOn && !record.isInUse) {
            item->setForeground(ui::palette().warning);
        }
    }
}

Result<Medium> MediumPart::typed() const
{
    const auto depth = lengthIn(*m_depth, m_shownIn);
    const auto amount = volumeIn(*m_amount, m_shownIn);
    m_depth->markWrong(!depth);
    m_amount->markWrong(!amount);
    if (!depth || !amount) {
        return fail(ErrorKind::Invalid, FormReason::AmountForm,
                    (depth ? m_amount : m_depth)->text().toStdString());
    }
    Medium medium;
    medium.id = MediumId{m_records->chosen()};
    medium.name = m_name->text().trimmed().toStdString();
    medium.form = chosenOf<MediumForm>(*m_form);
    medium.isNutrientBearing = m_nutrient->isChecked();
    medium.isAsRun = m_asRun->isChecked();
    medium.isReusable = m_reusable->isChecked();
    if (medium.isReusable && m_uses->value() > 0) {
        medium.plannedUses = m_uses->value();
    }
    medium.surfaceBelowRim = *depth;
    medium.amountPerTray = *amount;
    medium.marker = m_marker->currentData().toInt();
    medium.source = m_source->text().trimmed().toStdString();
    medium.note = m_note->text().trimmed().toStdString();
    medium.isRetired = m_retired->isChecked();
    return medium;
}

bool MediumPart::save()
{
    const auto medium = typed();
    if (!medium) {
        services().messages.refuse(sentence(medium.error()));
        return false;
    }
    const QString group = m_group->text().trimmed();
    const QString groupBefore = m_shownGroup;
    const auto saved = journal().media().save(*medium);
    if (!settle(saved, tr("Saved %1.").arg(m_name->text()))) {
        return false;
    }
    if (group != groupBefore && !settle(journal().media().setGroup(saved->id, group.toStdString()),
                                        tr("Saved %1.").arg(m_name->text()))) {
        return false;
    }
    m_records->choose(saved->id.value);
    settleForm();
    return true;
}

void MediumPart::remove()
{
    services().ask.confirm(
        this, tr("Remove a medium"), tr("Remove %1?").arg(m_name->text()), tr("Remove"), [this] {
            const auto done = journal().media().remove(MediumId{m_records->chosen()});
            if (!done && done.error().kind == ErrorKind::InUse) {
                services().messages.refuse(
                    tr("Trays or pieces hang on it. Mark it as no longer bought instead."));
                return;
            }
            if (settle(done, tr("Removed %1.").arg(m_name->text()))) {
                m_records->choose(0);
            }
        });
}

std::vector<PieceId> MediumPart::chosenPieces() const
{
    std::vector<PieceId> ids;
    for (const QListWidgetItem* item : m_pieces->selectedItems()) {
        ids.push_back(PieceId{item->data(Qt::UserRole).toLongLong()});
    }
    return ids;
}

void MediumPart::addPieces()
{
    settle(
        journal().media().addPieces(m_shown->id, m_newPieces->value(), journal().clock().today()),
        tr("Added %n piece(s).", nullptr, m_newPieces->value()));
}

void MediumPart::sanitise()
{
    const auto chosen = chosenPieces();
    if (chosen.empty()) {
        services().messages.refuse(tr("Choose the pieces that were sanitised."));
        return;
    }
    settle(journal().media().sanitise(chosen, m_method->text().trimmed().toStdString()),
           tr("%n piece(s) sanitised.", nullptr, static_cast<int>(chosen.size())));
}

void MediumPart::retire()
{
    const auto chosen = chosenPieces();
    if (chosen.size() != 1) {
        services().messages.refuse(tr("Choose one piece to retire."));
        return;
    }
    services().ask.line(this, tr("Retire a piece"), tr("Why?"), QString(),
                        [this, piece = chosen.front()](const QString& why) {
                            settle(journal().media().retirePiece(piece, why.toStdString()),
                                   tr("The piece is retired."));
                        });
}

} // namespace plumule::ui

#include "moc_medium_part.cpp"
