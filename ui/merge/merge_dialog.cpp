#include "ui/merge/merge_dialog.h"

#include "core/journal/merge/merge_entries.h"
#include "core/journal/room/room_entries.h"
#include "ui/backup/backup_keeper.h"
#include "ui/merge/acts_text.h"
#include "ui/merge/met_row.h"
#include "ui/page/undoing.h"
#include "ui/widget/flow_layout.h"
#include "ui/widget/lone_key.h"
#include "ui/widget/theme.h"

#include <QDateTime>
#include <QGridLayout>
#include <QKeyEvent>
#include <QLocale>
#include <QVBoxLayout>

namespace plumule::ui {
namespace {

QString takenText(const TakenCopy& copy)
{
    return QLocale(QLocale::English)
        .toString(QDateTime::fromMSecsSinceEpoch(copy.takenAtUtcMs),
                  QStringLiteral("ddd d MMM yyyy"));
}

QLabel* wrapped(const QString& text, const char* role, const char* name)
{
    auto* made = label(text, role);
    made->setObjectName(name);
    made->setWordWrap(true);
    return made;
}

} // namespace

void MergeDialog::begin(Journal& journal, const Services& services, QWidget* parent)
{
    const auto look = [&journal, services, parent](const QString& file) {
        services.tasks.run(
            tr("Looking at the copy"),
            [path = file.toStdString()](const Progress&) -> Result<std::shared_ptr<CopyFile>> {
                auto opened = openCopy(path);
                if (!opened) {
                    return passOn(opened);
                }
                return std::make_shared<CopyFile>(std::move(*opened));
            },
            parent,
            [&journal, services, parent](const Result<std::shared_ptr<CopyFile>>& opened) {
                auto coming = opened ? journal.copies().comeBack(std::move(**opened))
                                     : Result<std::unique_ptr<ComingBack>>(passOn(opened));
                if (!coming) {
                    services.messages.refuse(sentence(coming.error()));
                    return;
                }
                auto* dialog = new MergeDialog(journal, services, std::move(*coming), parent);
                dialog->setAttribute(Qt::WA_DeleteOnClose);
                dialog->open();
            });
    };
    services.ask.fileToOpen(parent, tr("Bring a copy back"), tr("Plumule journals (*.plumule)"),
                            look);
}

MergeDialog::MergeDialog(Journal& journal, const Services& services,
                         std::unique_ptr<ComingBack> coming, QWidget* parent)
    : FormDialog(services.ask, "mergeDialog", tr("Bring a copy back"), parent)
    , m_journal(journal)
    , m_services(services)
    , m_coming(std::move(coming))
    , m_key(new LoneKey(this))
{
    wish({scaled(980), scaled(680)});
    leaveFreely();
    buildHead();
    m_rowsLayout = new QVBoxLayout;
    m_rowsLayout->setSpacing(scaled(10));
    body()->addLayout(m_rowsLayout);
    m_acts = new Card(tr("Acts since %1").arg(takenText(m_coming->copy())));
    m_checks = new Card(tr("Before anything is written"));
    body()->addWidget(m_acts);
    body()->addWidget(m_checks);
    body()->addStretch(1);
    buildButtons();
    connect(m_key, &LoneKey::stoodAlone, this, &MergeDialog::chooseByKey);
    showPlan();
    beginAtUnchosen();
}

void MergeDialog::buildHead()
{
    const TakenCopy& copy = m_coming->copy();
    body()->addWidget(wrapped(tr("%1, copy %2, taken along %3")
                                  .arg(QString::fromStdString(copy.name))
                                  .arg(copy.id.value)
                                  .arg(takenText(copy)),
                              "muted", "mergeCopy"));
    auto* card = new Card({}, "answer");
    m_headline = wrapped({}, "strong", "mergeHeadline");
    card->body()->addWidget(m_headline);
    card->body()->addWidget(
        wrapped(tr("Nothing is dropped in silence: what you don’t choose is kept as a note on its "
                   "tray. All of it is one act, and can be taken back as one."),
                "muted", "mergePromise"));
    body()->addWidget(card);
}

void MergeDialog::buildButtons()
{
    const QString copy = QString::fromStdString(m_coming->copy().name);
    auto* here = addLeftButton(tr("All from here"), "allHere");
    auto* there = addLeftButton(tr("All from %1").arg(copy), "allThere");
    connect(here, &QPushButton::clicked, this, [this] { chooseAll(Side::Here); });
    connect(there, &QPushButton::clicked, this, [this] { chooseAll(Side::There); });
    connect(addButton(tr("Later"), "mergeLater"), &QPushButton::clicked, this, &QDialog::reject);
    m_together = addButton(tr("Bring together"), "mergeTogether", "primary");
    connect(m_together, &QPushButton::clicked, this, &MergeDialog::backUpFirst);
}

void MergeDialog::showPlan()
{
    auto plan = m_coming->plan(m_choices);
    if (!plan) {
        refuse(sentence(plan.error()));
        m_together->setEnabled(false);
        return;
    }
    m_plan = std::move(*plan);
    showHeadline();
    showRows();
    showActs();
    showChecks();
    m_together->setEnabled(m_plan.isReady());
    refuse(m_plan.broken && m_plan.unchosen() == 0 ? sentence(*m_plan.broken) : QString());
}

void MergeDialog::showHeadline()
{
    const ActsRow all = actsOf(m_plan).back();
    QString words = tr("%n act(s) come together", nullptr, all.here + all.there);
    if (m_plan.items.empty()) {
        words += tr("; nothing was changed on both.");
    } else if (m_plan.unchosen() == 0) {
        words += tr("; changed on both, and chosen: %1.").arg(m_plan.items.size());
    } else {
        words += tr("; changed on both: %1, still to choose: %2.")
                     .arg(m_plan.items.size())
                     .arg(m_plan.unchosen());
    }
    m_headline->setText(words);
}

void MergeDialog::showRows()
{
    clearLayout(m_rowsLayout);
    m_rows.clear();
    const auto room = m_journal.room().layout();
    const UnitText units(room ? room->room.units : UnitSystem::Metric);
    const MetWords words(m_journal, *m_coming, m_plan, units);
    const QString copy = QString::fromStdString(m_plan.copy.name);
    for (const MergeItem& item : m_plan.items) {
        auto* row = new MetRow(item, words, copy);
        connect(row, &MetRow::chosen, this, [this, families = item.families](int side) {
            choose(families, static_cast<Side>(side));
        });
        m_rowsLayout->addWidget(row);
        m_rows.push_back(row);
    }
    for (const Renamed& renamed : m_plan.renamed) {
        m_rowsLayout->addWidget(wrapped(words.renamed(renamed), "", "mergeRenamed"));
    }
}

void MergeDialog::showActs()
{
    clearLayout(m_acts->body());
    auto* grid = new QGridLayout;
    grid->setColumnStretch(0, 1);
    const auto put = [grid](int row, const QStringList& cells, const char* role) {
        for (int column = 0; column < cells.size(); ++column) {
            auto* made = label(cells[column], role);
            made->setWordWrap(column == 0);
            grid->addWidget(made, row, column,
                            column == 0 ? Qt::Alignment() : Qt::AlignRight | Qt::AlignVCenter);
        }
    };
    const auto number = [](int count) {
        return count == 0 ? QStringLiteral("–") : QString::number(count);
    };
    int row = 0;
    put(row, {QString(), tr("here"), QString::fromStdString(m_plan.copy.name), tr("met")}, "muted");
    const auto acts = actsOf(m_plan);
    for (const ActsRow& each : acts) {
        const bool isLast = &each == &acts.back();
        put(++row, {each.kind, number(each.here), number(each.there), number(each.met)},
            isLast ? "strong" : "");
    }
    auto* body = new QWidget;
    body->setLayout(grid);
    m_acts->body()->addWidget(body);
}

void MergeDialog::showChecks()
{
    clearLayout(m_checks->body());
    QStringList lines = {tr("✓ the copy is whole: every page, cell and checksum")};
    if (const int photos = m_coming->photosComing(m_plan); photos > 0) {
        lines << tr("✓ %n photograph(s) come along", nullptr, photos);
    }
    lines << tr("✓ a backup of this journal is made and checked first");
    auto* sound = wrapped(lines.join(QLatin1Char('\n')), "", "mergeChecks");
    m_checks->body()->addWidget(sound);
    if (const int left = m_plan.unchosen(); left > 0) {
        m_checks->body()->addWidget(
            wrapped(tr("%n still to choose", nullptr, left), "warning", "mergeLeft"));
    }
}

void MergeDialog::choose(const std::vector<Family>& families, Side side)
{
    for (const Family& family : families) {
        m_choices[family] = side;
    }
    showPlan();
    beginAtUnchosen();
}

// What comes up by that is asked on its own.
void MergeDialog::chooseAll(Side side)
{
    for (const MergeItem& item : m_plan.items) {
        for (const Family& family : item.families) {
            m_choices[family] = side;
        }
    }
    showPlan();
    beginAtUnchosen();
}

MetRow* MergeDialog::rowInFocus() const
{
    for (MetRow* row : m_rows) {
        if (row->isAncestorOf(focusWidget())) {
            return row;
        }
    }
    for (MetRow* row : m_rows) {
        if (!row->isChosen()) {
            return row;
        }
    }
    return nullptr;
}

void MergeDialog::chooseByKey(int side)
{
    if (MetRow* row = rowInFocus()) {
        choose(row->families(), static_cast<Side>(side));
    }
}

void MergeDialog::beginAtUnchosen()
{
    for (MetRow* row : m_rows) {
        if (!row->isChosen()) {
            row->begin();
            return;
        }
    }
    m_together->setFocus();
}

void MergeDialog::keyPressEvent(QKeyEvent* event)
{
    const bool isOfABurst = m_key->isInABurst(*event);
    const bool isHere = event->key() == Qt::Key_1;
    if ((isHere || event->key() == Qt::Key_2) && event->modifiers() == Qt::NoModifier) {
        if (!isOfABurst) {
            m_key->waitFor(static_cast<int>(isHere ? Side::Here : Side::There));
        }
        return;
    }
    FormDialog::keyPressEvent(event);
}

void MergeDialog::backUpFirst()
{
    m_together->setEnabled(false);
    m_services.tasks.run(tr("Backing up"), BackupKeeper::workOn(m_journal, m_services.preferences),
                         this, [this](const Result<BackupMade>& made) {
                             if (!made) {
                                 refuse(sentence(made.error()));
                                 m_together->setEnabled(m_plan.isReady());
                                 return;
                             }
                             bringTogether(*made);
                         });
}

void MergeDialog::bringTogether(const BackupMade& first)
{
    const auto room = m_journal.room().layout();
    const UnitText units(room ? room->room.units : UnitSystem::Metric);
    const MetWords words(m_journal, *m_coming, m_plan, units);
    const auto brought = m_coming->bringTogether(
        m_plan,
        [&](const MergeItem& item, std::int64_t tray) {
            return words.note(item, tray).toStdString();
        },
        first);
    if (!brought) {
        refuse(sentence(brought.error()));
        m_together->setEnabled(m_plan.isReady());
        return;
    }
    QStringList done = {
        tr("Brought the copy %1 back.").arg(QString::fromStdString(m_plan.copy.name))};
    for (const Renamed& renamed : brought->renamed) {
        done << words.renamed(renamed);
    }
    if (brought->photosMissing > 0) {
        done << tr("%n photograph(s) of it were not beside it.", nullptr, brought->photosMissing);
    }
    tellDone(m_journal, m_services, done.join(QLatin1Char(' ')));
    accept();
}

} // namespace plumule::ui

#include "moc_merge_dialog.cpp"
