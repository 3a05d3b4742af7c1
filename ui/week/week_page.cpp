#include "ui/week/week_page.h"

#include "core/journal/room/room_entries.h"
#include "core/journal/week/week_entries.h"
#include "ui/page/damaged_line.h"
#include "ui/page/saving.h"
#include "ui/page/sheets.h"
#include "ui/tray/sow_dialog.h"
#include "ui/week/proposal_card.h"
#include "ui/week/repeats_dialog.h"
#include "ui/week/week_calendar.h"
#include "ui/week/week_sheet.h"
#include "ui/week/week_table.h"
#include "ui/week/week_text.h"
#include "ui/widget/key_button.h"
#include "ui/widget/lone_key.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QKeyEvent>
#include <QScrollArea>
#include <QVBoxLayout>

namespace plumule::ui {

WeekPage::WeekPage(Journal& journal, Services services, QWidget* parent)
    : Page(journal, services, parent)
    , m_aside(journal, services.tasks, this)
{
    setFocusPolicy(Qt::ClickFocus);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(scaled(28), scaled(20), scaled(28), scaled(12));
    column->setSpacing(scaled(12));
    buildHead();
    m_damaged = damagedLine();
    column->addWidget(m_head);
    column->addWidget(m_damaged);
    QVBoxLayout* inner = nullptr;
    auto* scroll = scrolling(inner);
    scroll->setObjectName("weekScroll");
    auto* card = new Card;
    m_table = new WeekTable;
    m_words = label(QString(), "muted");
    m_words->setObjectName("weekWords");
    m_words->setWordWrap(true);
    card->body()->addWidget(m_table);
    card->body()->addWidget(m_words);
    m_proposals = new ProposalCard;
    m_read = new QWidget;
    auto* read = new QVBoxLayout(m_read);
    read->setContentsMargins(0, 0, 0, 0);
    read->setSpacing(scaled(14));
    read->addWidget(card);
    read->addWidget(m_proposals);
    m_read->hide(); // until something was read
    inner->addWidget(m_read);
    inner->addStretch(1);
    column->addWidget(scroll, 1);
    m_letter = new LoneKey(this);
    wireSignals();
}

QString WeekPage::name() const
{
    return tr("Week");
}

bool WeekPage::concerns(Concept about) const
{
    return about != Concept::Climate && about != Concept::Cost && about != Concept::Watering;
}

void WeekPage::buildHead()
{
    m_head = new PageHead(tr("The next 14 days"));
    auto* calendar = new KeyButton(tr("Calendar file…"), 'K');
    calendar->setObjectName("calendarFile");
    m_sheet = new KeyButton(tr("Print sheet"), 'P');
    m_sheet->setObjectName("weekSheet");
    auto* repeats = new KeyButton(tr("Repeats…"), 'R');
    repeats->setObjectName("repeatsOpen");
    m_sow = new KeyButton(tr("Sow…"), 'S', "primary");
    m_sow->setObjectName("weekSow");
    m_sow->setEnabled(!journal().isReadOnly());
    connect(calendar, &QPushButton::clicked, this, &WeekPage::saveCalendar);
    connect(m_sheet, &QPushButton::clicked, this, &WeekPage::offerSheet);
    connect(repeats, &QPushButton::clicked, this, &WeekPage::openRepeats);
    connect(m_sow, &QPushButton::clicked, this, &WeekPage::openSowing);
    for (QPushButton* each : {static_cast<QPushButton*>(calendar), m_sheet,
                              static_cast<QPushButton*>(repeats), m_sow}) {
        m_head->addControl(each);
    }
}

void WeekPage::wireSignals()
{
    connect(m_proposals, &ProposalCard::sowAsked, this, &WeekPage::sow);
    connect(m_proposals, &ProposalCard::skipAsked, this, &WeekPage::skip);
    connect(m_proposals, &ProposalCard::listAsked, this, &WeekPage::openRepeats);
    connect(m_letter, &LoneKey::stoodAlone, this, &WeekPage::pressKey);
}

void WeekPage::reload()
{
    m_aside.ask(
        tr("Looking ahead"),
        [](Journal& journal, const Progress&) { return journal.week().week(); },
        [this](const Result<Week>& week) { show(week); });
}

void WeekPage::show(const Result<Week>& week)
{
    const auto layout = journal().room().layout();
    if (!accept(layout) || !accept(week)) {
        return;
    }
    m_layout = *layout;
    m_week = *week;
    const UnitText words(m_layout.room.units);
    m_head->setSubtitle(tr("%1  ·  from the trays' stages, trials' plans and repeating sowings")
                            .arg(spanText(m_week)));
    m_damaged->setText(damagedWords(m_week.damaged));
    m_damaged->setVisible(!m_week.damaged.empty());
    m_table->show(m_week, words);
    m_words->setText(
        m_week.expected
            ? tr("Washing includes sanitising. What is late stands under today. 8 in 10 times the "
                 "sum of the fourteen days lies in its own interval, which is narrower than the "
                 "sum of the days' ends. Second cuts are not foretold.")
            : tr("Washing includes sanitising. What is late stands under today. Seed and pieces "
                 "are "
                 "to be ordered a week before they run short."));
    m_read->show();
    m_proposals->show(m_week.proposals, words, m_week.from,
                      journal().isReadOnly() ? ProposalCard::Acts::ReadOnly
                                             : ProposalCard::Acts::Allowed);
}

void WeekPage::begin()
{
    setFocus();
}

void WeekPage::sow(RepeatId repeat, Date due)
{
    if (accept(journal().week().sow(repeat, due))) {
        tellLast();
    }
    setFocus();
}

void WeekPage::skip(RepeatId repeat, Date due)
{
    if (accept(journal().week().skip(repeat, due))) {
        tellLast();
    }
    setFocus();
}

void WeekPage::openSowing()
{
    auto* dialog = new SowDialog(journal(), services(), this);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    connect(dialog, &SowDialog::sown, this, [this] { tellLast(); });
    dialog->open();
}

void WeekPage::openRepeats()
{
    auto* dialog = new RepeatsDialog(journal(), services(), this);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->open();
}

void WeekPage::saveCalendar()
{
    saveAs(this, services(), tr("Save the calendar"),
           QStringLiteral("week %1.ics").arg(QString::fromStdString(toIso(m_week.from))),
           tr("Calendars (*.ics)"), [this](const QString& path) {
               return writeWeekCalendar(m_week, m_layout.room, journal().clock().utcMilliseconds(),
                                        path);
           });
}

bool WeekPage::print()
{
    offerSheet();
    return true;
}

void WeekPage::offerSheet()
{
    ui::offerSheet(
        *this, *m_sheet, [this] { printSheet(); }, [this] { saveSheet(); });
}

void WeekPage::saveSheet()
{
    saveAs(this, services(), tr("Save the sheet"),
           QStringLiteral("week %1.pdf").arg(QString::fromStdString(toIso(m_week.from))),
           tr("PDF (*.pdf)"),
           [this](const QString& path) { return writeWeekSheet(m_week, m_layout, path); });
}

void WeekPage::printSheet()
{
    sendToPrinter(this, services(), [this](QPagedPaintDevice& printer) {
        return printWeekSheet(m_week, m_layout, printer);
    });
}

void WeekPage::keyPressEvent(QKeyEvent* event)
{
    if (!m_letter->hear(*event)) {
        Page::keyPressEvent(event);
    }
}

void WeekPage::pressKey(int key)
{
    const auto press = [this](const QString& objectName) {
        auto* pressed = findChild<QPushButton*>(objectName);
        if (pressed != nullptr && pressed->isEnabled()) {
            pressed->click();
        }
    };
    switch (key) {
    case Qt::Key_K:
        return saveCalendar();
    case Qt::Key_P:
        return offerSheet();
    case Qt::Key_R:
        return openRepeats();
    case Qt::Key_S:
        return press(m_sow->objectName());
    default:
        if (key >= Qt::Key_1 && key <= Qt::Key_9) {
            press(QStringLiteral("sow%1").arg(key - Qt::Key_0));
        }
    }
}

} // namespace plumule::ui

#include "moc_week_page.cpp"
