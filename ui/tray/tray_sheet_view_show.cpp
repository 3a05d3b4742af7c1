// Part of ui/tray/tray_sheet_view.h: what each card shows of a snapshot.
#include "ui/tray/tray_sheet_view.h"

#include "core/journal/room/room_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "ui/chart/chart_view.h"
#include "ui/text/missing_price_text.h"
#include "ui/tray/place_dialog.h"
#include "ui/tray/stage_strip.h"
#include "ui/tray/start_dialog.h"
#include "ui/tray/tray_list_model.h"
#include "ui/widget/flow_layout.h"
#include "ui/widget/row_direction.h"
#include "ui/widget/theme.h"

#include <QBoxLayout>
#include <QFileInfo>

namespace plumule::ui {
namespace {

QWidget* factRow(const QString& name, const QString& value, const char* role = "")
{
    auto* row = new QWidget;
    auto* layout = new QHBoxLayout(row);
    layout->setContentsMargins(0, scaled(2), 0, scaled(2));
    layout->addWidget(label(name, "muted"));
    layout->addStretch(1);
    layout->addWidget(label(value, role));
    return row;
}

void addWords(QVBoxLayout& rows, const QString& words)
{
    auto* line = label(words, "muted");
    line->setWordWrap(true);
    rows.addWidget(line);
}

QString momentText(Date on, int minute)
{
    return QStringLiteral("%1, %2").arg(shortDayText(on), clockText(minute));
}

ChartSpec heightSpec(const TraySheet& sheet)
{
    ChartSpec spec;
    spec.key = "tray_heights";
    spec.form = ChartForm::Curves;
    spec.x.key = "day";
    spec.x.isWhole = true;
    spec.x.low = 0;
    spec.x.high = dayCount(sheet.record.tray.sownOn, sheet.plan.harvest.date);
    spec.y.key = "height";
    spec.y.unit = "mm";
    spec.y.low = 0;
    ChartSeries dots;
    dots.marker = sheet.record.medium.marker;
    for (const Height& height : sheet.heights) {
        if (const auto above = heightAboveSurface(height, sheet.record.medium)) {
            const double day = dayCount(sheet.record.tray.sownOn, height.on);
            dots.points.push_back({day, inMillimetres(*above), "", std::nullopt, false});
        }
    }
    spec.series.push_back(std::move(dots));
    return spec;
}

} // namespace

// What the tray is, where it stands and what it is doing.
QStringList TraySheetView::headWords(const TraySheet& sheet) const
{
    const Tray& tray = sheet.record.tray;
    QStringList words{QString::fromStdString(sheet.record.variety),
                      QString::fromStdString(sheet.record.medium.name)};
    if (sheet.record.pieceNumber) {
        words.last() += tr(", piece %1").arg(*sheet.record.pieceNumber);
    }
    if (sheet.record.seedLot) {
        words << tr("lot %1").arg(QString::fromStdString(*sheet.record.seedLot));
    }
    if (tray.seed) {
        words << tr("%1 of seed").arg(m_units.mass(*tray.seed));
    }
    words << tr("sown %1").arg(longDateText(tray.sownOn));
    if (tray.state == TrayState::Growing) {
        words << nameOf(sheet.spot);
    }
    if (sheet.record.trialName) {
        words << QString::fromStdString(*sheet.record.trialName);
    }
    words << doingText(tray, sheet.plan);
    if (tray.discardReason) {
        words.last() += ": " + QString::fromStdString(*tray.discardReason);
    }
    if (tray.setAsideReason) {
        words << tr("set aside: %1").arg(QString::fromStdString(*tray.setAsideReason));
    }
    return words;
}

void TraySheetView::showHead(const TraySheet& sheet)
{
    const Tray& tray = sheet.record.tray;
    const bool isGrowing = tray.state == TrayState::Growing;
    m_head->setTitle(QString::fromStdString(tray.code));
    setAccessibleName(tr("Sheet of %1").arg(QString::fromStdString(tray.code)));
    m_head->setSubtitle(headWords(sheet).join("  ·  "));
    const bool hasNext =
        isGrowing && sheet.plan.current && *sheet.plan.current + 1 < sheet.plan.spans.size();
    m_moveOn->setVisible(hasNext);
    if (hasNext) {
        m_moveOn->setText(
            tr("Into %1").arg(nameOf(sheet.plan.spans[*sheet.plan.current + 1].stage)));
    }
    m_notYet->setVisible(isGrowing);
    m_discard->setVisible(isGrowing);
    m_move->setVisible(isGrowing);
    m_weigh->setVisible(isGrowing && !hasNext);
    m_setAside->setText(tray.setAsideReason ? tr("Count it again") : tr("Set aside…"));
    m_setAside->setVisible(tray.state == TrayState::Harvested);
}

QWidget* TraySheetView::stageRow(const StageSpan& span)
{
    auto* row = new QWidget;
    const QBoxLayout::Direction direction = rowDirection();
    const bool isBeside = direction == QBoxLayout::LeftToRight;
    auto* layout = new QBoxLayout(direction, row);
    layout->setContentsMargins(0, 0, 0, isBeside ? 0 : scaled(10));
    auto* stageName = label(nameOf(span.stage), "strong");
    stageName->setMinimumWidth(scaled(110));
    layout->addWidget(stageName);
    auto* planned =
        label(tr("planned %1").arg(momentText(span.planned.date, span.planned.minute)), "muted");
    planned->setMinimumWidth(scaled(150));
    layout->addWidget(planned);
    layout->addSpacing(isBeside ? scaled(16) : 0);
    row->setMinimumHeight(scaled(34)); // with a button or without
    layout->addWidget(label((span.hasStarted ? tr("began %1") : tr("due %1"))
                                .arg(momentText(span.start.date, span.start.minute))));
    layout->addStretch(1);
    if (span.hasStarted) {
        auto* correct = button(tr("Correct…"), "quiet");
        correct->setAccessibleName(tr("Correct when %1 began").arg(nameOf(span.stage)));
        connect(correct, &QPushButton::clicked, this,
                [this, stage = span.stage] { correctStart(stage); });
        layout->addWidget(correct, 0, Qt::AlignLeft);
    }
    return row;
}

void TraySheetView::showStages(const TraySheet& sheet)
{
    const Tray& tray = sheet.record.tray;
    std::optional<Moment> ended;
    if (tray.endedOn) {
        ended = Moment{*tray.endedOn, tray.endedMinute.value_or(0)};
    }
    m_strip->show(sheet.plan, tray.sownAt(), ended, now());
    clearLayout(m_stageRows);
    for (const StageSpan& span : sheet.plan.spans) {
        m_stageRows->addWidget(stageRow(span));
    }
    m_stageRows->addWidget(
        factRow(tray.endedOn ? nameOf(tray.state) : tr("harvest due"),
                tray.endedOn ? momentText(*tray.endedOn, tray.endedMinute.value_or(0))
                             : momentText(sheet.plan.harvest.date, sheet.plan.harvest.minute),
                "strong"));
}

void TraySheetView::correctStart(Stage stage)
{
    for (const StageSpan& span : m_sheet->plan.spans) {
        if (span.stage == stage) {
            auto* dialog = new StartDialog(m_services.ask, nameOf(stage), span.start, this);
            dialog->setAttribute(Qt::WA_DeleteOnClose);
            connect(dialog, &StartDialog::chosen, this, [this, stage](Date on, int minute) {
                done(m_journal.trays().correctStart(m_tray, stage, {on, minute}));
            });
            dialog->open();
        }
    }
}

void TraySheetView::moveToPlace()
{
    const auto spots = m_journal.room().freeSpots();
    if (!spots) {
        m_services.messages.refuse(sentence(spots.error()));
        return;
    }
    auto* dialog = new PlaceDialog(m_services.ask, *spots, this);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    connect(dialog, &PlaceDialog::chosen, this, [this](qint64 place) {
        const auto target = place == 0 ? std::nullopt : std::optional(PlaceId{place});
        done(m_journal.trays().moveTo(m_tray, target, now()));
    });
    dialog->open();
}

void TraySheetView::showHeights(const TraySheet& sheet)
{
    m_heightChart->draw(heightSpec(sheet));
    m_heightChart->setVisible(!sheet.heights.empty());
    int notPlaced = 0;
    for (const Height& height : sheet.heights) {
        notPlaced += heightAboveSurface(height, sheet.record.medium) ? 0 : 1;
    }
    QString words = sheet.heights.empty()
                        ? tr("No height is noted yet.")
                        : tr("%n reading(s).", nullptr, static_cast<int>(sheet.heights.size()));
    if (const auto depth = sheet.record.medium.surfaceBelowRim) {
        words += ' ' + tr("This medium lies %1 below the rim; rim readings are corrected by it.")
                           .arg(m_units.length(*depth));
    }
    if (notPlaced > 0) {
        words += ' ' + tr("%n rim reading(s) can't be shown: the medium's depth is not known.",
                          nullptr, notPlaced);
    }
    m_heightWords->setText(words);
}

void TraySheetView::showWeights(const TraySheet& sheet)
{
    clearLayout(m_weightRows);
    Mass sum;
    for (const Harvest& cut : sheet.harvests) {
        m_weightRows->addWidget(
            factRow(tr("cut %1, %2").arg(cut.cut).arg(momentText(cut.on, cut.minute)),
                    m_units.mass(cut.net), "strong"));
        sum += cut.net;
    }
    if (sheet.harvests.empty()) {
        addWords(*m_weightRows, tr("Not weighed yet."));
    }
    const Tray& tray = sheet.record.tray;
    if (!sheet.harvests.empty() && tray.seed && tray.seed->count() > 0) {
        m_weightRows->addWidget(factRow(
            m_units.units() == UnitSystem::Metric ? tr("per gram of seed")
                                                  : tr("per ounce of seed"),
            QStringLiteral("%1 %2").arg(numberText(sum / *tray.seed, 1), m_units.massUnit())));
    }
    for (const Residue& residue : sheet.residues) {
        m_weightRows->addWidget(factRow(tr("residue"), m_units.mass(residue.net)));
    }
}

void TraySheetView::showWaterings(const TraySheet& sheet)
{
    clearLayout(m_wateringRows);
    m_giveWater->setVisible(sheet.record.tray.state == TrayState::Growing);
    if (sheet.waterings.empty()) {
        addWords(*m_wateringRows, tr("Not watered yet."));
        return;
    }
    Volume sum;
    for (const Watering& watering : sheet.waterings) {
        sum += watering.amount.value_or(Volume());
    }
    m_wateringRows->addWidget(
        factRow(tr("%n watering(s)", nullptr, static_cast<int>(sheet.waterings.size())),
                m_units.mixed(sum), "strong"));
    constexpr std::size_t kShown = 8;
    const std::size_t first = sheet.waterings.size() > kShown ? sheet.waterings.size() - kShown : 0;
    for (std::size_t i = sheet.waterings.size(); i > first; --i) {
        const Watering& watering = sheet.waterings[i - 1];
        const QString amount =
            watering.amount ? m_units.watering(*watering.amount) + ' ' : QString();
        m_wateringRows->addWidget(
            factRow(momentText(watering.on, watering.minute),
                    watering.isBetween ? tr("%1, as needed").arg(amount + nameOf(watering.water))
                                       : amount + nameOf(watering.water)));
    }
}

void TraySheetView::showCost(const TraySheet& sheet)
{
    clearLayout(m_costRows);
    const QString currency = QString::fromStdString(sheet.currency);
    const auto add = [&](const QString& part, const std::optional<double>& cost) {
        m_costRows->addWidget(
            factRow(part, cost ? moneyText(*cost, currency, 3) : tr("not known")));
    };
    add(tr("seed"), sheet.cost.seed);
    add(tr("medium"), sheet.cost.medium);
    if (sheet.record.medium.isReusable) {
        add(tr("washing"), sheet.cost.washing);
    }
    add(tr("nutrient"), sheet.cost.nutrient);
    add(tr("water"), sheet.cost.water);
    add(tr("light"), sheet.cost.light);
    add(tr("labour"), sheet.cost.labour);
    add(tr("packaging"), sheet.cost.packaging);
    add(tr("waste"), sheet.cost.waste);
    m_costRows->addWidget(rule());
    const bool isWhole = sheet.cost.unknownParts() == 0;
    m_costRows->addWidget(factRow(isWhole ? tr("together") : tr("together, as far as known"),
                                  moneyText(sheet.cost.total(), currency), "strong"));
    if (sheet.costPerGram) {
        m_costRows->addWidget(
            factRow(tr("what it weighed"),
                    costPerGramText(*sheet.costPerGram, currency, m_units.units()), "strong"));
    }
    if (!isWhole) {
        addWords(*m_costRows, lackText(sheet));
    }
}

// What the sum lacks: which prices, and from when they hold.
QString TraySheetView::lackText(const TraySheet& sheet)
{
    QStringList words;
    for (const MissingPrice& each : sheet.missingPrices) {
        words << sentence(each, QString::fromStdString(sheet.record.medium.name));
    }
    for (const SeedLack lack : sheet.seedLacks) {
        words << sentence(lack);
    }
    const bool isPriced = sheet.missingPrices.empty() && sheet.seedLacks.empty();
    words << (isPriced ? tr("What was not measured is missing from the sum.")
                       : tr("Give prices on the Set-up page, from the day they held."));
    return words.join(' ');
}

void TraySheetView::showNotes(const TraySheet& sheet)
{
    clearLayout(m_noteRows);
    for (const TrayNote& note : sheet.notes) {
        auto* row = new QWidget;
        auto* layout = new QHBoxLayout(row);
        layout->setContentsMargins(0, 0, 0, 0);
        layout->addWidget(label(momentText(note.on, note.minute), "muted"));
        auto* words = label(QString::fromStdString(note.text));
        words->setWordWrap(true);
        layout->addWidget(words, 1);
        auto* remove = button(tr("Remove"), "quiet");
        connect(remove, &QPushButton::clicked, this,
                [this, id = note.id] { done(m_journal.trays().removeNote(id)); });
        layout->addWidget(remove);
        m_noteRows->addWidget(row);
    }
}

void TraySheetView::showPhotos(const TraySheet& sheet)
{
    clearLayout(m_photoRow);
    const QString folder = QString::fromStdString(m_journal.photoFolder().string());
    for (const Photo& photo : sheet.photos) {
        auto* cell = new QWidget;
        auto* column = new QVBoxLayout(cell);
        column->setContentsMargins(0, 0, 0, 0);
        auto* picture = label(QString());
        const QString path = folder + '/' + QString::fromStdString(photo.fileName);
        const QPixmap pixmap(path);
        if (pixmap.isNull()) {
            picture->setText(tr("%1 is missing").arg(QFileInfo(path).fileName()));
        } else {
            picture->setPixmap(pixmap.scaled(scaled(160), scaled(120), Qt::KeepAspectRatio,
                                             Qt::SmoothTransformation));
        }
        column->addWidget(picture);
        column->addWidget(label(momentText(photo.on, photo.minute), "muted"));
        auto* remove = button(tr("Remove"), "quiet");
        connect(remove, &QPushButton::clicked, this,
                [this, id = photo.id] { done(m_journal.trays().removePhoto(id)); });
        column->addWidget(remove);
        m_photoRow->addWidget(cell);
    }
    if (sheet.photos.empty()) {
        auto* none = label(tr("None yet. They are kept as files beside the journal."), "muted");
        none->setWordWrap(true);
        m_photoRow->addWidget(none);
    }
}

} // namespace plumule::ui
