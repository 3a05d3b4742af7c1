#include "ui/widget/master_detail.h"

#include "ui/widget/form_panel.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QFormLayout>
#include <QListWidget>
#include <QScrollArea>
#include <QSignalBlocker>

namespace plumule::ui {
namespace {

constexpr int kBesideWidth = 720;
constexpr int kListAbove = 104; // three records in sight

} // namespace

MasterDetail::MasterDetail(const QString& newName, QWidget* parent)
    : QWidget(parent)
{
    m_sides = new QBoxLayout(QBoxLayout::LeftToRight, this);
    m_sides->setContentsMargins(0, 0, 0, 0);
    m_sides->setSpacing(scaled(16));
    m_sides->addWidget(buildList(newName));
    QVBoxLayout* inner = nullptr;
    m_sides->addWidget(scrolling(inner), 1);
    layOut();
    inner->addWidget(buildForm());
    m_below = new QVBoxLayout;
    m_below->setSpacing(scaled(14));
    inner->addLayout(m_below);
    inner->addStretch(1);
}

QWidget* MasterDetail::buildList(const QString& newName)
{
    auto* card = new Card;
    m_list = new QListWidget;
    m_list->setObjectName("records");
    m_list->setAccessibleName(tr("Records"));
    m_list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_list->setTextElideMode(Qt::ElideRight);
    auto* make = button(newName);
    make->setObjectName("newRecord");
    card->body()->addWidget(m_list, 1);
    card->body()->addWidget(make);
    connect(make, &QPushButton::clicked, this, [this] { takeChoice(0); });
    connect(m_list, &QListWidget::currentItemChanged, this, [this](const QListWidgetItem* item) {
        if (item != nullptr) {
            takeChoice(item->data(Qt::UserRole).toLongLong());
        }
    });
    return card;
}

QWidget* MasterDetail::buildForm()
{
    m_panel = new FormPanel;
    auto* column = new QVBoxLayout(m_panel);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(scaled(14));
    auto* card = new Card;
    m_form = fieldForm();
    if (isTypeLarge()) {
        // Beside the list a field needs the whole width, below its name.
        m_form->setRowWrapPolicy(QFormLayout::WrapAllRows);
    }
    card->body()->addLayout(m_form);
    m_record = new QVBoxLayout;
    m_record->setSpacing(scaled(14));
    column->addWidget(card);
    column->addLayout(m_record);
    column->addWidget(buildButtons());
    connect(m_panel, &FormPanel::entered, this, &MasterDetail::saveAsked);
    return m_panel;
}

QWidget* MasterDetail::buildButtons()
{
    auto* bar = new QWidget;
    auto* row = new QHBoxLayout(bar);
    row->setContentsMargins(scaled(18), 0, scaled(18), 0);
    m_remove = button(tr("Remove…"), "danger");
    m_remove->setObjectName("removeRecord");
    auto* save = button(tr("Save"), "primary");
    save->setObjectName("saveRecord");
    row->addWidget(m_remove);
    row->addStretch(1);
    row->addWidget(save);
    connect(save, &QPushButton::clicked, this, &MasterDetail::saveAsked);
    connect(m_remove, &QPushButton::clicked, this, &MasterDetail::removeAsked);
    return bar;
}

// Where there is no room beside it, the list stands above its form.
void MasterDetail::layOut()
{
    const bool wasBeside = m_sides->direction() == QBoxLayout::LeftToRight;
    const bool isBeside = standsBeside(width(), scaled(kBesideWidth), wasBeside);
    m_sides->setDirection(isBeside ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom);
    const int wide = std::min(scaled(236), 270);
    m_list->setMinimumWidth(isBeside ? wide : 0);
    m_list->setMaximumWidth(isBeside ? wide : QWIDGETSIZE_MAX);
    m_list->setMaximumHeight(isBeside ? QWIDGETSIZE_MAX : scaled(kListAbove));
}

void MasterDetail::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    layOut();
}

// By hand: another record was pressed, or New.
void MasterDetail::takeChoice(qint64 id)
{
    if (!m_panel->isChanged() || !m_mayLeave) {
        begin(id);
        return;
    }
    // The list stays where the form is until it may go on. Queued: it is still choosing.
    QMetaObject::invokeMethod(
        this,
        [this, id] {
            showChosen();
            m_mayLeave([this, id] { begin(id); });
        },
        Qt::QueuedConnection);
}

void MasterDetail::begin(qint64 id)
{
    choose(id);
    m_isNew = id == 0;
    Q_EMIT chosenByHand(id);
}

void MasterDetail::setItems(const std::vector<Item>& items)
{
    const QSignalBlocker quiet(m_list);
    const qint64 kept = m_chosen;
    const bool wasEmpty = m_list->count() == 0;
    m_list->clear();
    for (const Item& item : items) {
        auto* entry = new QListWidgetItem(item.icon, item.name, m_list);
        entry->setData(Qt::UserRole, item.id);
    }
    const bool isNew = m_isNew;
    choose(kept == 0 && wasEmpty && !isNew && !items.empty() ? items.front().id : kept);
    m_isNew = isNew && m_chosen == 0;
    if (m_chosen != 0 && m_list->currentRow() < 0 && !items.empty()) {
        choose(items.front().id);
    }
}

void MasterDetail::choose(qint64 id)
{
    m_chosen = id;
    m_isNew = false;
    showChosen();
    m_remove->setEnabled(id != 0);
}

void MasterDetail::showChosen()
{
    const QSignalBlocker quiet(m_list);
    int row = -1;
    for (int i = 0; i < m_list->count(); ++i) {
        if (m_list->item(i)->data(Qt::UserRole).toLongLong() == m_chosen) {
            row = i;
        }
    }
    if (row != m_list->currentRow()) {
        m_list->setCurrentRow(row);
    }
}

} // namespace plumule::ui

#include "moc_master_detail.cpp"
