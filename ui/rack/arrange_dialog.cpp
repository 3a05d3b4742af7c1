#include "ui/rack/arrange_dialog.h"

#include "ui/climate/lamp_dialog.h"
#include "ui/room/room_part.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QPointer>
#include <QScreen>
#include <QVBoxLayout>

#include <algorithm>

namespace plumule::ui {

ArrangeDialog::ArrangeDialog(Journal& journal, const Services& services, QWidget* parent)
    : QDialog(parent)
    , m_journal(journal)
    , m_messages(new MessageBar)
    , m_services{services.ask, *m_messages, services.preferences, services.tasks}
{
    setObjectName("arrangeDialog");
    setWindowTitle(tr("Racks and shelves"));
    setProperty("role", "page");
    setAttribute(Qt::WA_StyledBackground);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(scaled(20), scaled(18), scaled(20), scaled(14));
    column->setSpacing(scaled(10));
    column->addWidget(label(windowTitle(), "title"));
    m_part = new RoomPart(journal, m_services, RoomPart::Fields::Racks);
    column->addWidget(m_part, 1);
    column->addWidget(m_messages);
    column->addWidget(buildFoot());
    m_part->reload();
    m_listener = journal.addListener(
        [part = QPointer<RoomPart>(m_part)](const std::vector<Change>& changes) {
            const bool isMine =
                part && std::any_of(changes.begin(), changes.end(),
                                    [&](const Change& each) { return part->concerns(each.about); });
            if (isMine) {
                // Queued: the change comes from inside one of its own buttons.
                QMetaObject::invokeMethod(
                    part, [part] { part->reload(); }, Qt::QueuedConnection);
            }
        });
    const QSize most = screen()->availableSize() * 0.9;
    resize(QSize(scaled(860), scaled(680)).boundedTo(most));
}

ArrangeDialog::~ArrangeDialog()
{
    m_journal.removeListener(m_listener);
}

QWidget* ArrangeDialog::buildFoot()
{
    auto* foot = new QWidget;
    auto* row = new QHBoxLayout(foot);
    row->setContentsMargins(0, 0, 0, 0);
    auto* lamps = button(tr("Light under the lamps…"));
    lamps->setObjectName("arrangeLamps");
    auto* close = button(tr("Close"));
    close->setObjectName("arrangeClose");
    row->addWidget(lamps);
    row->addStretch(1);
    row->addWidget(close);
    connect(lamps, &QPushButton::clicked, this, &ArrangeDialog::measureLight);
    connect(close, &QPushButton::clicked, this, &ArrangeDialog::reject);
    return foot;
}

void ArrangeDialog::measureLight()
{
    auto* dialog = new LampDialog(m_journal, m_services, this);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->open();
}

void ArrangeDialog::reject()
{
    if (!m_part->hasUnsaved()) {
        QDialog::reject();
        return;
    }
    m_services.ask.unsaved(
        this, tr("What you typed of the racks is not saved. Save it first?"),
        [this] {
            if (m_part->saveTyped()) {
                QDialog::reject();
            }
        },
        [this] { QDialog::reject(); });
}

} // namespace plumule::ui

#include "moc_arrange_dialog.cpp"
