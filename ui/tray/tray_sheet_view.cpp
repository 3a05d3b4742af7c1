#include "ui/tray/tray_sheet_view.h"

#include "core/journal/climate/climate_entries.h"
#include "core/journal/room/room_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "ui/chart/chart_view.h"
#include "ui/climate/climate_card.h"
#include "ui/page/undoing.h"
#include "ui/tray/stage_strip.h"
#include "ui/widget/amount_field.h"
#include "ui/widget/choice_box.h"
#include "ui/widget/emptied.h"
#include "ui/widget/flow_layout.h"
#include "ui/widget/theme.h"

#include <QBoxLayout>
#include <QLineEdit>
#include <QScrollArea>

namespace plumule::ui {

TraySheetView::TraySheetView(Journal& journal, Services services, QWidget* parent)
    : QWidget(parent)
    , m_journal(journal)
    , m_services(services)
{
    setObjectName("traySheet");
    setFocusPolicy(Qt::StrongFocus);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(scaled(12));
    buildHead();
    column->addWidget(m_head);
    QVBoxLayout* inner = nullptr;
    column->addWidget(scrolling(inner), 1);
    inner->addWidget(buildStages());
    m_columns = new QBoxLayout(QBoxLayout::LeftToRight);
    m_columns->setSpacing(scaled(16));
    inner->addLayout(m_columns, 1);
    auto* left = new QVBoxLayout;
    auto* right = new QVBoxLayout;
    for (auto* side : {left, right}) {
        side->setSpacing(scaled(16));
    }
    left->addWidget(buildHeights());
    m_climate = new ClimateCard;
    left->addWidget(m_climate);
    left->addWidget(buildNotes());
    left->addWidget(buildPhotos());
    left->addStretch(1);
    right->addWidget(buildWeights());
    right->addWidget(buildCost());
    right->addWidget(buildWaterings());
    right->addStretch(1);
    m_columns->addLayout(left, 3);
    m_columns->addLayout(right, 2);
    buildActions();
}

void TraySheetView::buildHead()
{
    m_head = new PageHead(QString());
    const auto add = [this](QPushButton*& each, const QString& words, const char* buttonName,
                            const char* role = "") {
        each = button(words, role);
        each->setObjectName(buttonName);
        m_head->addControl(each);
    };
    QPushButton* back = nullptr;
    add(back, tr("All trays"), "backToList");
    connect(back, &QPushButton::clicked, this, &TraySheetView::left);
    add(m_move, tr("Move…"), "movePlace");
    add(m_setAside, tr("Set aside…"), "setAside");
    add(m_discard, tr("Discard…"), "discard", "danger");
    add(m_notYet, tr("Not yet"), "notYet");
    add(m_moveOn, tr("Move on"), "moveOn", "primary");
    add(m_weigh, tr("Weigh"), "weigh", "primary");
}

void TraySheetView::buildActions()
{
    connect(m_moveOn, &QPushButton::clicked, this, &TraySheetView::moveOn);
    connect(m_notYet, &QPushButton::clicked, this, &TraySheetView::notYet);
    connect(m_discard, &QPushButton::clicked, this, &TraySheetView::discard);
    connect(m_setAside, &QPushButton::clicked, this, &TraySheetView::setAside);
    connect(m_move, &QPushButton::clicked, this, &TraySheetView::moveToPlace);
    connect(m_weigh, &QPushButton::clicked, this, [this] {
        if (m_sheet) {
            Q_EMIT weighingAsked(QString::fromStdString(m_sheet->record.tray.code));
        }
    });
}

Card* TraySheetView::buildStages()
{
    auto* card = new Card(tr("Stages, by day of growth"));
    m_strip = new StageStrip;
    m_stageRows = new QVBoxLayout;
    m_stageRows->setSpacing(scaled(2));
    card->body()->addWidget(m_strip);
    card->body()->addLayout(m_stageRows);
    return card;
}

Card* TraySheetView::buildHeights()
{
    auto* card = new Card(tr("Height above the medium"));
    m_heightChart = new ChartView;
    m_heightChart->setMinimumHeight(scaled(190));
    m_heightWords = label(QString(), "muted");
    m_heightWords->setWordWrap(true);
    m_height = new NumberField;
    m_height->setObjectName("height");
    m_height->setAccessibleName(tr("Height read"));
    m_height->setMaximumWidth(scaled(120));
    m_readFrom = new QComboBox;
    m_readFrom->setObjectName("readFrom");
    for (const ReadFrom from : {ReadFrom::Surface, ReadFrom::Rim}) {
        addChoice(*m_readFrom, nameOf(from), from);
    }
    auto* note = button(tr("Note the height"));
    note->setObjectName("addHeight");
    auto* row = new FlowLayout;
    row->addWidget(m_height);
    row->addWidget(m_readFrom);
    row->addWidget(note);
    card->body()->addWidget(m_heightChart, 1);
    card->body()->addWidget(m_heightWords);
    card->body()->addLayout(row);
    connect(note, &QPushButton::clicked, this, &TraySheetView::addHeight);
    connect(m_height, &QLineEdit::returnPressed, this, &TraySheetView::addHeight);
    return card;
}

Card* TraySheetView::buildWeights()
{
    auto* card = new Card(tr("Weights"));
    m_weightRows = new QVBoxLayout;
    card->body()->addLayout(m_weightRows);
    return card;
}

Card* TraySheetView::buildWaterings()
{
    auto* card = new Card(tr("Waterings"));
    m_giveWater = button(tr("Water as needed…"), "quiet");
    m_giveWater->setObjectName("giveWater");
    card->headingRow()->addWidget(m_giveWater);
    connect(m_giveWater, &QPushButton::clicked, this, [this] { Q_EMIT wateringAsked(m_tray); });
    m_wateringRows = new QVBoxLayout;
    m_wateringRows->setSpacing(scaled(2));
    card->body()->addLayout(m_wateringRows);
    return card;
}

Card* TraySheetView::buildCost()
{
    auto* card = new Card(tr("What it cost"));
    m_costRows = new QVBoxLayout;
    m_costRows->setSpacing(scaled(2));
    card->body()->addLayout(m_costRows);
    return card;
}

Card* TraySheetView::buildNotes()
{
    auto* card = new Card(tr("Notes"));
    m_noteRows = new QVBoxLayout;
    m_note = new QLineEdit;
    m_note->setObjectName("note");
    m_note->setAccessibleName(tr("New note"));
    m_note->setPlaceholderText(tr("Write a note and press Enter"));
    card->body()->addLayout(m_noteRows);
    card->body()->addWidget(m_note);
    connect(m_note, &QLineEdit::returnPressed, this, &TraySheetView::addNote);
    return card;
}

Card* TraySheetView::buildPhotos()
{
    auto* card = new Card(tr("Photographs"));
    auto* add = button(tr("Add…"), "quiet");
    add->setObjectName("addPhoto");
    card->headingRow()->addWidget(add);
    m_photoRow = new FlowLayout;
    card->body()->addLayout(m_photoRow);
    connect(add, &QPushButton::clicked, this, &TraySheetView::addPhoto);
    return card;
}

bool TraySheetView::hasTyped() const
{
    return !m_note->text().trimmed().isEmpty() || !m_height->text().trimmed().isEmpty();
}

void TraySheetView::keepTyped()
{
    addNote();
    if (!m_height->text().trimmed().isEmpty()) {
        addHeight();
    }
    emptyForGood(*m_note);
    emptyForGood(*m_height);
    m_height->markWrong(false);
}

void TraySheetView::show(TrayId tray)
{
    if (m_tray.isStored() && m_tray != tray) {
        keepTyped();
    }
    m_tray = tray;
    reload();
}

void TraySheetView::reload()
{
    if (!m_tray.isStored()) {
        return;
    }
    const auto sheet = m_journal.trays().sheet(m_tray);
    if (!sheet) {
        // The sowing was taken back: there is no such tray any more.
        m_tray = {};
        m_sheet.reset();
        Q_EMIT left();
        return;
    }
    m_sheet = *sheet;
    if (const auto layout = m_journal.room().layout()) {
        m_units = UnitText(layout->room.units);
    }
    m_height->setUnit(m_units.lengthUnit());
    showHead(*m_sheet);
    showStages(*m_sheet);
    showHeights(*m_sheet);
    m_climate->show(m_journal.climate().ofTray(m_tray),
                    dayCount(m_sheet->record.tray.sownOn, m_sheet->plan.harvest.date),
                    m_units.units());
    showWeights(*m_sheet);
    showWaterings(*m_sheet);
    showCost(*m_sheet);
    showNotes(*m_sheet);
    showPhotos(*m_sheet);
}

template <class T>
bool TraySheetView::done(const Result<T>& result)
{
    if (!result) {
        m_services.messages.refuse(sentence(result.error()));
        return false;
    }
    tellLast(m_journal, m_services);
    return true;
}

void TraySheetView::moveOn()
{
    done(m_journal.trays().moveOn(m_tray, now()));
}

void TraySheetView::notYet()
{
    done(m_journal.trays().notYet(m_tray, kMinutesPerDay / 2));
}

void TraySheetView::discard()
{
    m_services.ask.line(this, tr("Discard this tray"),
                        tr("Why? Mould means: out of the room, closed up, with gloves and a mask."),
                        QString(), [this](const QString& reason) {
                            done(m_journal.trays().discard(m_tray, reason.toStdString(), now()));
                        });
}

void TraySheetView::setAside()
{
    if (m_sheet && m_sheet->record.tray.setAsideReason) {
        done(m_journal.trays().setAside(m_tray, std::nullopt));
        return;
    }
    m_services.ask.line(this, tr("Set this tray aside"),
                        tr("It stays in the journal but is not counted in reviews. Why?"),
                        QString(), [this](const QString& reason) {
                            done(m_journal.trays().setAside(m_tray, reason.toStdString()));
                        });
}

void TraySheetView::addHeight()
{
    const auto length = lengthIn(*m_height, m_units.units());
    if (!length || !*length) {
        m_height->markWrong(true);
        m_services.messages.refuse(length ? tr("Please type the height that you read.")
                                          : sentence(length.error()));
        return;
    }
    if (done(m_journal.trays().noteHeight(m_tray, **length, chosenOf<ReadFrom>(*m_readFrom),
                                          now()))) {
        emptyForGood(*m_height);
    }
}

void TraySheetView::addNote()
{
    const QString text = m_note->text().trimmed();
    if (!text.isEmpty() && done(m_journal.trays().writeNote(m_tray, text.toStdString(), now()))) {
        emptyForGood(*m_note);
    }
}

void TraySheetView::addPhoto()
{
    m_services.ask.fileToOpen(
        this, tr("Add a photograph"), tr("Pictures (*.jpg *.jpeg *.png *.webp)"),
        [this](const QString& file) {
            done(m_journal.trays().attachPhoto(m_tray, file.toStdString(), {}, now()));
        });
}

void TraySheetView::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    m_columns->setDirection(width() >= scaled(900) ? QBoxLayout::LeftToRight
                                                   : QBoxLayout::TopToBottom);
}

} // namespace plumule::ui

#include "moc_tray_sheet_view.cpp"
