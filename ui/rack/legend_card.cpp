#include "ui/rack/legend_card.h"

#include "ui/medium/marker.h"
#include "ui/tray/stage_strip.h"
#include "ui/widget/flow_layout.h"
#include "ui/widget/theme.h"

#include <QPainter>

#include <map>

namespace plumule::ui {
namespace {

class SignDot : public QWidget
{
public:
    explicit SignDot(TraySign sign)
        : m_sign(sign)
    {
        setFixedSize(scaled(20), scaled(20));
    }

protected:
    void paintEvent(QPaintEvent*) override
    {
        QPainter painter(this);
        painter.setRenderHint(QPainter::Antialiasing);
        paintSign(painter, QRectF(rect()).center(), scaled(16), m_sign);
    }

private:
    TraySign m_sign;
};

class Swatch : public QWidget
{
public:
    explicit Swatch(const QColor& colour)
        : m_colour(colour)
    {
        setFixedSize(scaled(16), scaled(12));
    }

protected:
    void paintEvent(QPaintEvent*) override
    {
        QPainter painter(this);
        painter.setRenderHint(QPainter::Antialiasing);
        painter.setPen(QPen(ui::palette().fieldEdge, 1));
        painter.setBrush(m_colour);
        painter.drawRoundedRect(QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5), 2, 2);
    }

private:
    QColor m_colour;
};

QWidget* item(QWidget* mark, const QString& words)
{
    auto* both = new QWidget;
    auto* row = new QHBoxLayout(both);
    row->setContentsMargins(0, 0, scaled(10), 0);
    row->setSpacing(scaled(6));
    row->addWidget(mark, 0, Qt::AlignVCenter);
    row->addWidget(label(words));
    return both;
}

std::vector<const StandingTray*> traysOf(const RoomRacks& room)
{
    std::vector<const StandingTray*> trays;
    for (const StandingPlace* place : room.walk()) {
        if (place->tray) {
            trays.push_back(&*place->tray);
        }
    }
    for (const StandingTray& tray : room.offRacks) {
        trays.push_back(&tray);
    }
    return trays;
}

QColor pale(QColor colour)
{
    colour.setAlphaF(0.26F);
    return colour;
}

} // namespace

LegendCard::LegendCard(QWidget* parent)
    : Card(tr("Key"), "card", parent)
{
    setObjectName("rackKey");
}

void LegendCard::show(const RoomRacks& room, ShownBy by)
{
    clearLayout(body());
    addSigns();
    addColours(room, by);
    addMedia(room);
}

void LegendCard::addSigns()
{
    const std::vector<std::pair<TraySign, QString>> signs = {
        {TraySign::Thirsty, tr("thirsty: a watering was missed")},
        {TraySign::Ready, tr("ready: look, then move it on")},
        {TraySign::Due, tr("due: to be cut")}};
    for (const auto& [sign, words] : signs) {
        auto* line = new QWidget;
        auto* row = new QHBoxLayout(line);
        row->setContentsMargins(0, 0, 0, 0);
        row->setSpacing(scaled(8));
        auto* meaning = label(words);
        meaning->setWordWrap(true);
        row->addWidget(new SignDot(sign), 0, Qt::AlignTop);
        row->addWidget(meaning, 1);
        body()->addWidget(line);
    }
    auto* days = label(tr("Days are those until the cut."), "muted");
    days->setWordWrap(true);
    body()->addWidget(days);
}

void LegendCard::addColours(const RoomRacks& room, ShownBy by)
{
    auto* flow = new QWidget;
    auto* row = new FlowLayout(flow);
    row->setSpacing(scaled(4));
    if (by == ShownBy::Days) {
        for (const CutBand band :
             {CutBand::Now, CutBand::Soon, CutBand::ThisWeek, CutBand::Later}) {
            row->addWidget(item(new Swatch(bandColour(band)), nameOf(band)));
        }
    }
    std::map<int, Stage> stages;
    for (const StandingTray* tray : traysOf(room)) {
        for (const StageSpan& span : tray->plan.spans) {
            stages.emplace(static_cast<int>(span.stage), span.stage);
        }
    }
    for (const auto& [order, stage] : stages) {
        row->addWidget(item(new Swatch(stageColour(stage)), nameOf(stage)));
    }
    row->addWidget(item(new Swatch(pale(stageColour(Stage::Light))), tr("to come")));
    body()->addWidget(flow);
}

void LegendCard::addMedia(const RoomRacks& room)
{
    std::map<std::string, int> markers;
    for (const StandingTray* tray : traysOf(room)) {
        markers.emplace(tray->medium.name, tray->medium.marker);
    }
    if (markers.empty()) {
        return;
    }
    auto* flow = new QWidget;
    auto* row = new FlowLayout(flow);
    row->setSpacing(scaled(4));
    for (const auto& [name, marker] : markers) {
        row->addWidget(item(new MarkerDot(marker), QString::fromStdString(name)));
    }
    body()->addWidget(flow);
}

} // namespace plumule::ui

#include "moc_legend_card.cpp"
