#include "ui/widget/choice_menu.h"

#include "ui/widget/plain_words.h"
#include "ui/widget/widgets.h"

#include <QMenu>

namespace plumule::ui {

ChoiceMenu::ChoiceMenu(const QString& all, std::function<QString(int)> counted, QWidget* parent)
    : QPushButton(all, parent)
    , m_all(all)
    , m_counted(std::move(counted))
    , m_menu(new QMenu(this))
{
    setRole(this, "menu");
    setMenu(m_menu);
    connect(m_menu, &QMenu::triggered, this, [this](const QAction* pressed) {
        const qint64 id = pressed->data().toLongLong();
        if (!pressed->data().isValid()) {
            m_chosen.clear();
        } else if (pressed->isChecked()) {
            m_chosen.push_back(id);
        } else {
            std::erase(m_chosen, id);
        }
        showChoice();
        Q_EMIT chosenByHand();
    });
}

void ChoiceMenu::setItems(const std::vector<Item>& items)
{
    m_menu->clear();
    m_menu->addAction(m_all);
    m_menu->addSeparator();
    for (const Item& item : items) {
        QAction* choice = m_menu->addAction(plainEntry(item.name));
        choice->setCheckable(true);
        choice->setData(item.id);
    }
    showChoice();
}

void ChoiceMenu::choose(const std::vector<qint64>& ids)
{
    m_chosen = ids;
    showChoice();
}

void ChoiceMenu::showChoice()
{
    QStringList names;
    for (QAction* choice : m_menu->actions()) {
        const bool isChosen =
            choice->data().isValid() && std::find(m_chosen.begin(), m_chosen.end(),
                                                  choice->data().toLongLong()) != m_chosen.end();
        choice->setChecked(isChosen);
        if (isChosen) {
            names << choice->text();
        }
    }
    setText(names.isEmpty()    ? m_all
            : names.size() < 3 ? names.join(", ")
                               : m_counted(static_cast<int>(names.size())));
}

} // namespace plumule::ui

#include "moc_choice_menu.cpp"
