#include "ui/variety/protocol_editor.h"

#include "core/variety/variety_reason.h"
#include "ui/text/form_reason.h"
#include "ui/text/text.h"
#include "ui/widget/amount_field.h"
#include "ui/widget/choice_box.h"
#include "ui/widget/flow_layout.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QCheckBox>
#include <QFormLayout>
#include <QVBoxLayout>

namespace plumule::ui {
namespace {

constexpr int kAsNeeded = 3; // in the list of waterings

int minutesAUnit(Stage stage)
{
    return stage == Stage::Soak ? 60 : kMinutesPerDay;
}

QComboBox* waterBox(bool mayBeAutomatic)
{
    auto* box = new QComboBox;
    if (mayBeAutomatic) {
        box->addItem(ProtocolEditor::tr("the same, but nutrient becomes pH-set"));
    }
    for (const WaterKind water : {WaterKind::Plain, WaterKind::PhSet, WaterKind::Nutrient}) {
        addChoice(*box, nameOf(water), water);
    }
    return box;
}

QWidget* pair(QWidget* first, QWidget* second)
{
    auto* both = new QWidget;
    auto* row = new FlowLayout(both);
    row->addWidget(first);
    row->addWidget(second);
    return both;
}

} // namespace

ProtocolEditor::ProtocolEditor(QWidget* parent)
    : QWidget(parent)
{
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(scaled(14));
    const std::array stages{Stage::Soak, Stage::UnderWeight, Stage::Blackout, Stage::Light};
    for (std::size_t i = 0; i < stages.size(); ++i) {
        m_rows[i].stage = stages[i];
        column->addWidget(buildRow(m_rows[i]));
    }
}

void ProtocolEditor::makeFields(Row& row)
{
    const QString key = QString::fromLatin1(toText(row.stage));
    const QString stageName = nameOf(row.stage);
    row.isUsed = new QCheckBox(stageName);
    row.isUsed->setObjectName(key + "Used");
    row.isUsed->setFont(uiFont(1.0, QFont::DemiBold));
    row.length = new NumberField(row.stage == Stage::Soak ? tr("hours") : tr("days"));
    row.length->setObjectName(key + "Length");
    row.length->setAccessibleName(tr("Length, %1").arg(stageName));
    row.length->setRange(0, row.stage == Stage::Soak ? 72 : 60);
    row.waterings = new QComboBox;
    row.waterings->addItems({tr("no watering"), tr("once a day, mornings"), tr("twice a day"),
                             tr("as needed: looked at in every round")});
    row.waterings->setObjectName(key + "Waterings");
    row.waterings->setAccessibleName(tr("Waterings a day, %1").arg(stageName));
    row.method = new QComboBox;
    for (const auto method : {WateringMethod::None, WateringMethod::Mist, WateringMethod::Below}) {
        addChoice(*row.method, nameOf(method), method);
    }
    row.method->setAccessibleName(tr("Way of watering, %1").arg(stageName));
    row.amount = new NumberField;
    row.amount->setObjectName(key + "Amount");
    row.amount->setPlaceholderText(tr("not measured"));
    row.amount->setAccessibleName(tr("Amount a tray, %1").arg(stageName));
    row.water = waterBox(false);
    row.water->setAccessibleName(tr("Water, %1").arg(stageName));
    row.waterOnNutrient = waterBox(true);
    for (QComboBox* box : {row.waterings, row.method, row.water, row.waterOnNutrient}) {
        box->setSizeAdjustPolicy(QComboBox::AdjustToContents);
    }
    row.cue = new QLineEdit;
    row.cue->setObjectName(key + "Cue");
    row.cue->setPlaceholderText(tr("what to look for before moving on"));
}

QWidget* ProtocolEditor::buildRow(Row& row)
{
    makeFields(row);
    auto* card = new Card;
    row.fields = new QWidget;
    auto* form = fieldForm();
    row.fields->setLayout(form);
    form->addRow(tr("Length"), row.length);
    form->addRow(tr("Waterings, how"), pair(row.waterings, row.method));
    form->addRow(tr("Amount a tray, water"), pair(row.amount, row.water));
    form->addRow(tr("On a nutrient-bearing medium"), row.waterOnNutrient);
    form->addRow(tr("Cue"), row.cue);
    card->body()->addWidget(row.isUsed);
    card->body()->addWidget(row.fields);
    connect(row.isUsed, &QCheckBox::toggled, this, [this, &row] { showUsed(row); });
    return card;
}

void ProtocolEditor::showUsed(Row& row)
{
    row.fields->setVisible(row.isUsed->isChecked());
}

void ProtocolEditor::show(const std::vector<ProtocolStage>& stages, UnitSystem units)
{
    m_units = units;
    for (Row& row : m_rows) {
        ProtocolStage shown;
        shown.stage = row.stage;
        bool isUsed = false;
        for (const ProtocolStage& stage : stages) {
            if (stage.stage == row.stage) {
                shown = stage;
                isUsed = true;
            }
        }
        row.id = shown.id;
        row.isUsed->setChecked(isUsed);
        row.length->setNumber(double(shown.lengthMinutes) / minutesAUnit(row.stage), 2);
        const bool isAsNeeded = shown.wateringsPerDay == 0 && shown.method != WateringMethod::None;
        row.waterings->setCurrentIndex(isAsNeeded ? kAsNeeded : shown.wateringsPerDay);
        choose(*row.method, shown.method);
        showVolume(*row.amount, shown.amount, units);
        choose(*row.water, shown.water);
        choose(*row.waterOnNutrient, shown.waterOnNutrientBearing);
        row.cue->setText(QString::fromStdString(shown.cue));
        showUsed(row);
    }
}

Result<std::vector<ProtocolStage>> ProtocolEditor::stages() const
{
    std::vector<ProtocolStage> stages;
    for (const Row& row : m_rows) {
        if (!row.isUsed->isChecked()) {
            continue;
        }
        const auto amount = volumeIn(*row.amount, m_units);
        const auto length = row.length->number();
        row.amount->markWrong(!amount);
        row.length->markWrong(!length || !*length);
        if (!amount) {
            return fail(ErrorKind::Invalid, FormReason::AmountForm,
                        row.amount->text().toStdString());
        }
        if (!length || !*length) {
            return fail(ErrorKind::Invalid, FormReason::LengthForm,
                        row.length->text().toStdString());
        }
        ProtocolStage stage;
        stage.id = row.id;
        stage.stage = row.stage;
        stage.lengthMinutes = qRound(**length * minutesAUnit(row.stage));
        const int often = row.waterings->currentIndex();
        stage.wateringsPerDay = often == kAsNeeded ? 0 : often;
        stage.method = chosenOf<WateringMethod>(*row.method);
        const bool isContrary = (often == 0) != (stage.method == WateringMethod::None);
        if (isContrary) {
            return fail(ErrorKind::Invalid, VarietyReason::StageMethod, toText(row.stage));
        }
        stage.amount = *amount;
        stage.water = chosenOf<WaterKind>(*row.water);
        stage.waterOnNutrientBearing = chosen<WaterKind>(*row.waterOnNutrient);
        stage.cue = row.cue->text().trimmed().toStdString();
        stages.push_back(stage);
    }
    return stages;
}

} // namespace plumule::ui

#include "moc_protocol_editor.cpp"
