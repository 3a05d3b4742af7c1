#include "ui/trial/diary_card.h"

#include "ui/medium/marker.h"
#include "ui/widget/theme.h"

#include <QComboBox>
#include <QGridLayout>
#include <QImageReader>
#include <QVBoxLayout>

namespace plumule::ui {
namespace {

constexpr int kColumns = 3;
constexpr int kPhotoWide = 220;

// Read at the size it is shown at: photographs are large.
QPixmap smallPhoto(const QString& path)
{
    QImageReader reader(path);
    reader.setAutoTransform(true);
    const QSize size = reader.size();
    if (size.isValid()) {
        reader.setScaledSize(
            size.scaled(scaled(kPhotoWide), scaled(kPhotoWide), Qt::KeepAspectRatio));
    }
    return QPixmap::fromImage(reader.read());
}

} // namespace

DiaryCard::DiaryCard(std::filesystem::path photoFolder, QWidget* parent)
    : Card(tr("Notes and photographs, the media side by side"), "card", parent)
    , m_photoFolder(std::move(photoFolder))
{
    wrapHeading();
    m_day = new QComboBox;
    m_day->setObjectName("diaryDay");
    m_day->setSizeAdjustPolicy(QComboBox::AdjustToContents);
    m_day->setMinimumContentsLength(11); // 24 May 2026
    m_day->setAccessibleName(tr("Day"));
    headingRow()->addWidget(m_day);
    m_columns = new QGridLayout;
    m_columns->setSpacing(scaled(16));
    m_failed = label(QString(), "muted");
    m_failed->setObjectName("diaryFailed");
    m_failed->setWordWrap(true);
    body()->addWidget(m_failed);
    body()->addLayout(m_columns);
    connect(m_day, &QComboBox::currentIndexChanged, this, &DiaryCard::showDay);
}

void DiaryCard::show(const Result<std::vector<TrialDay>>& days)
{
    m_days = days.value_or(std::vector<TrialDay>());
    m_failed->setText(days ? QString() : sentence(days.error()));
    m_failed->setVisible(!days);
    m_day->setVisible(!m_days.empty());
    setVisible(!days || !m_days.empty());
    const QSignalBlocker quiet(m_day);
    const QString kept = m_day->currentText();
    m_day->clear();
    for (const TrialDay& day : m_days) {
        m_day->addItem(longDateText(day.on));
    }
    const int index = m_day->findText(kept);
    m_day->setCurrentIndex(index >= 0 ? index : m_day->count() - 1);
    showDay(m_day->currentIndex());
}

void DiaryCard::showDay(int index)
{
    clearLayout(m_columns);
    if (index < 0 || index >= static_cast<int>(m_days.size())) {
        return;
    }
    int number = 0;
    for (const TrialDayOfMedium& medium : m_days[static_cast<std::size_t>(index)].media) {
        m_columns->addWidget(columnOf(medium), number / kColumns, number % kColumns, Qt::AlignTop);
        ++number;
    }
    for (int column = 0; column < kColumns; ++column) {
        m_columns->setColumnStretch(column, 1);
    }
}

QWidget* DiaryCard::columnOf(const TrialDayOfMedium& medium) const
{
    auto* widget = new QWidget;
    auto* column = new QVBoxLayout(widget);
    column->setContentsMargins(0, 0, 0, 0);
    auto* head = new QHBoxLayout;
    head->addWidget(new MarkerDot(medium.medium.marker));
    head->addWidget(label(QString::fromStdString(medium.medium.name), "strong"), 1);
    column->addLayout(head);
    for (const auto& [code, photo] : medium.photos) {
        const QPixmap picture =
            smallPhoto(QString::fromStdString((m_photoFolder / photo.fileName).string()));
        auto* shown = new QLabel;
        if (picture.isNull()) {
            shown->setText(
                tr("The file %1 is not there.").arg(QString::fromStdString(photo.fileName)));
            setRole(shown, "muted");
        } else {
            shown->setPixmap(picture);
        }
        shown->setAccessibleName(tr("Photograph of %1").arg(QString::fromStdString(code)));
        column->addWidget(shown);
        column->addWidget(label(
            QStringList{QString::fromStdString(code), QString::fromStdString(photo.caption)}.join(
                "  "),
            "muted"));
    }
    for (const auto& [code, note] : medium.notes) {
        auto* words = label(QStringLiteral("%1  %2").arg(QString::fromStdString(code),
                                                         QString::fromStdString(note.text)));
        words->setWordWrap(true);
        column->addWidget(words);
    }
    return widget;
}

} // namespace plumule::ui

#include "moc_diary_card.cpp"
