#include "ui/stock/trace_card.h"

#include "core/journal/room/room_entries.h"
#include "core/journal/stock/stock_entries.h"
#include "ui/medium/marker.h"
#include "ui/page/sheets.h"
#include "ui/stock/stock_text.h"
#include "ui/stock/trace_dialog.h"
#include "ui/stock/trace_sheet.h"
#include "ui/widget/flow_layout.h"
#include "ui/widget/key_button.h"
#include "ui/widget/theme.h"

#include <QHBoxLayout>
#include <QPushButton>

#include <algorithm>
#include <map>

namespace plumule::ui {
namespace {

// Older ones stand on the sheet.
constexpr std::size_t kMostShown = 30;

// How many trays stand on which medium.
QWidget* mediaRow(const TracedSowing& sowing)
{
    std::map<int, int> byMarker;
    std::map<int, QString> names;
    for (const TracedTray& tray : sowing.trays) {
        ++byMarker[tray.medium.marker];
        names[tray.medium.marker] = QString::fromStdString(tray.medium.name);
    }
    auto* both = new QWidget;
    auto* row = new QHBoxLayout(both);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(scaled(5));
    for (const auto& [marker, count] : byMarker) {
        row->addWidget(label(QString::number(count), "muted"));
        auto* dot = new MarkerDot(marker);
        dot->setToolTip(names[marker]);
        dot->setAccessibleName(names[marker]);
        row->addWidget(dot);
        row->addSpacing(scaled(6));
    }
    auto* cut = label(cutText(sowing), "muted");
    cut->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
    cut->setWordWrap(true);
    row->addWidget(cut, 1);
    return both;
}

} // namespace

TraceCard::TraceCard(Journal& journal, Services services, QWidget* parent)
    : Card(tr("Trace"), "answer", parent)
    , m_journal(journal)
    , m_services(services)
{
    setObjectName("trace");
    wrapHeading();
    m_open = button(tr("Its sheet"), "quiet");
    m_open->setObjectName("traceOpen");
    m_print = button(tr("Print sheet"), "quiet");
    m_print->setObjectName("tracePrint");
    headingRow()->addWidget(m_open);
    headingRow()->addWidget(m_print);
    m_lines = new QVBoxLayout;
    m_lines->setSpacing(scaled(6));
    body()->addLayout(m_lines);
    buildFoot();
    m_print->hide();
    m_open->hide();
    addWords(tr("Choose a lot or a piece at the left, or ask for one below."), "muted");
    connect(m_print, &QPushButton::clicked, this, &TraceCard::printTrace);
    connect(m_open, &QPushButton::clicked, this, [this] {
        if (m_from && std::holds_alternative<TrayId>(*m_from)) {
            Q_EMIT trayAsked(std::get<TrayId>(*m_from));
        }
    });
}

void TraceCard::buildFoot()
{
    body()->addWidget(rule());
    auto* foot = new FlowLayout;
    auto* code = new KeyButton(tr("A tray, back…"), 'T');
    code->setObjectName("traceTray");
    auto* other = button(tr("Lot, piece, mix or person…"));
    other->setObjectName("traceOther");
    foot->addWidget(code);
    foot->addWidget(other);
    body()->addLayout(foot);
    connect(code, &QPushButton::clicked, this, &TraceCard::askWhat);
    connect(other, &QPushButton::clicked, this, &TraceCard::choose);
}

UnitText TraceCard::units() const
{
    const auto layout = m_journal.room().layout();
    return UnitText(layout ? layout->room.units : UnitSystem::Metric);
}

void TraceCard::addWords(const QString& words, const char* role)
{
    auto* line = label(words, role);
    line->setWordWrap(true);
    m_lines->addWidget(line);
}

void TraceCard::askWhat()
{
    m_services.ask.line(this, tr("Trace"), tr("A tray's code, or a lot, piece, water or person"),
                        QString(), [this](const QString& text) {
                            const auto found = m_journal.stock().find(text.toStdString());
                            if (!found) {
                                m_services.messages.refuse(sentence(found.error()));
                                return;
                            }
                            follow(*found);
                        });
}

void TraceCard::choose()
{
    auto* dialog = new TraceDialog(m_journal, m_services, this);
    connect(dialog, &TraceDialog::chosen, this, &TraceCard::follow);
    dialog->open();
}

void TraceCard::follow(const TraceFrom& from)
{
    m_from = from;
    readAgain();
}

void TraceCard::readAgain()
{
    if (!m_from) {
        return;
    }
    clearLayout(m_lines);
    const auto* tray = std::get_if<TrayId>(&*m_from);
    m_open->setVisible(tray != nullptr);
    m_print->show();
    const auto refused = [this](const Error& error) {
        m_print->hide();
        m_open->hide();
        addWords(sentence(error), "muted");
    };
    if (tray != nullptr) {
        const auto back = m_journal.stock().back(*tray);
        back ? showBack(*back) : refused(back.error());
    } else {
        const auto forward = m_journal.stock().forward(*m_from);
        forward ? showForward(*forward) : refused(forward.error());
    }
}

void TraceCard::showForward(const ForwardTrace& trace)
{
    setHeading(titleOf(trace));
    for (const QString& fact : factsOf(trace, units())) {
        addWords(fact, "muted");
    }
    const std::size_t left = trace.sowings.size() - std::min(trace.sowings.size(), kMostShown);
    if (left > 0) {
        addWords(tr("%n older sowing(s) stand on the sheet.", nullptr, static_cast<int>(left)),
                 "muted");
    }
    for (std::size_t i = left; i < trace.sowings.size(); ++i) {
        addSowing(trace.sowings[i]);
    }
    m_lines->addWidget(rule());
    addWords(sumText(trace.sums), "strong");
    QString weights = tr("%1 cut").arg(units().mass(trace.sums.yield, 0));
    if (trace.sums.seed > Mass{}) {
        weights += tr(", from %1 of seed").arg(units().mass(trace.sums.seed, 0));
    }
    addWords(weights + '.', "");
    if (const QString held = promisesText(trace.sums); !held.isEmpty()) {
        addWords(held, "muted");
    }
    if (trace.sums.withoutSeed > 0) {
        addWords(tr("%n tray(s) without a weight of seed.", nullptr, trace.sums.withoutSeed),
                 "muted");
    }
}

void TraceCard::addSowing(const TracedSowing& sowing)
{
    m_lines->addWidget(rule());
    auto* both = new QWidget;
    auto* row = new QHBoxLayout(both);
    row->setContentsMargins(0, 0, 0, 0);
    auto* codes = label(codesOf(sowing));
    codes->setWordWrap(true);
    row->addWidget(label(shortDayText(sowing.on), "strong"));
    row->addWidget(codes, 1);
    row->addWidget(label(units().mass(sowing.yield(), 0), "strong"));
    m_lines->addWidget(both);
    m_lines->addWidget(mediaRow(sowing));
    const bool isOneVariety = m_from && (std::holds_alternative<SeedLotId>(*m_from));
    if (!isOneVariety) {
        addWords(QString::fromStdString(sowing.variety), "muted");
    }
    for (const TraceNote& note : notesOf(sowing)) {
        addWords(note.words, note.isWarned ? "warning" : "muted");
    }
}

void TraceCard::showBack(const BackTrace& trace)
{
    setHeading(titleOf(trace));
    for (const TraceStep& step : stepsOf(trace, units())) {
        m_lines->addWidget(rule());
        addWords(step.what, "strong");
        for (const QString& line : step.lines) {
            addWords(line, "");
        }
    }
}

void TraceCard::printTrace()
{
    if (!m_from) {
        return;
    }
    sendToPrinter(this, m_services, [this, from = *m_from](QPagedPaintDevice& printer) {
        return printTraceSheet(m_journal, from, units(), printer);
    });
}

} // namespace plumule::ui

#include "moc_trace_card.cpp"
