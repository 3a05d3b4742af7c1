#include "ui/widget/master_detail.h"

#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QFormLayout>
#include <QListWidget>
#include <QScrollArea>
#include <QSignalBlocker>

namespace plumule::ui {

MasterDetail::MasterDetail(const QString& newName, QWidget* parent)
    : QWidget(parent)
{
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(scaled(16));

    auto* listCard = new Card;
    m_list = new QListWidget;
    m_list->setObjectName("records");
    m_list->setFixedWidth(std::min(scaled(236), 270));
    m_list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_list->setTextElideMode(Qt::ElideRight);
    auto* begin = button(newName);
    begin->setObjectName("newRecord");
    listCard->body()->addWidget(m_list, 1);
    listCard->body()->addWidget(begin);
    row->addWidget(listCard);

    QVBoxLayout* inner = nullptr;
    auto* area = scrolling(inner);
    auto* card = new Card;
    m_form = fieldForm();
    card->body()->addLayout(m_form);
    auto* buttons = new QHBoxLayout;
    m_remove = button(tr("Remove…"), "danger");
    m_remove->setObjectName("removeRecord");
    auto* save = button(tr("Save"), "primary");
    save->setObjectName("saveRecord");
    buttons->addWidget(m_remove);
    buttons->addStretch(1);
    buttons->addWidget(save);
    card->body()->addSpacing(scaled(6));
    card->body()->addLayout(buttons);
    inner->addWidget(card);
    m_below = new QVBoxLayout;
    m_below->setSpacing(scaled(14));
    inner->addLayout(m_below);
    inner->addStretch(1);
    row->addWidget(area, 1);

    connect(begin, &QPushButton::clicked, this, [this] {
        choose(0);
        m_isNew = true;
        Q_EMIT chosenByHand(0);
    });
    connect(save, &QPushButton::clicked, this, &MasterDetail::saveAsked);
    connect(m_remove, &QPushButton::clicked, this, &MasterDetail::removeAsked);
    connect(m_list, &QListWidget::currentItemChanged, this, [this](const QListWidgetItem* item) {
        if (item != nullptr) {
            m_chosen = item->data(Qt::UserRole).toLongLong();
            m_isNew = false;
            m_remove->setEnabled(true);
            Q_EMIT chosenByHand(m_chosen);
        }
    });
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
    const QSignalBlocker quiet(m_list);
    m_chosen = id;
    m_isNew = false;
    m_list->setCurrentRow(-1);
    for (int i = 0; i < m_list->count(); ++i) {
        if (m_list->item(i)->data(Qt::UserRole).toLongLong() == id) {
            m_list->setCurrentRow(i);
        }
    }
    m_remove->setEnabled(id != 0);
}

void MasterDetail::setRemovable(bool isRemovable)
{
    m_remove->setVisible(isRemovable);
}

} // namespace plumule::ui

#include "moc_master_detail.cpp"
