// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/ui/sheet/sample_document.h"

#include "core/sheet/content_hash.h"

#include <QBuffer>
#include <QImage>
#include <QLinearGradient>
#include <QPainter>
#include <QRandomGenerator>

namespace ohmwright::sheet {

QByteArray photo(QSize size, int seed, const char *format)
{
    QImage image(size, QImage::Format_RGB32);
    QPainter painter(&image);
    painter.setRenderHint(QPainter::Antialiasing);
    QLinearGradient sky(0, 0, 0, size.height());
    sky.setColorAt(0, QColor::fromHsv((seed * 47) % 360, 30, 230));
    sky.setColorAt(1, QColor::fromHsv((seed * 47 + 40) % 360, 60, 120));
    painter.fillRect(image.rect(), sky);
    QRandomGenerator random(static_cast<quint32>(seed));
    for (int i = 0; i < 40; ++i) {
        const QColor colour = QColor::fromHsv(random.bounded(360), 40 + random.bounded(80),
                                              60 + random.bounded(160), 190);
        painter.setBrush(colour);
        painter.setPen(QPen(colour.darker(), size.width() / 400.0));
        const double w = size.width() * (0.05 + random.generateDouble() * 0.25);
        const double h = size.height() * (0.05 + random.generateDouble() * 0.25);
        painter.drawRoundedRect(
            QRectF(random.bounded(size.width()), random.bounded(size.height()), w, h), w * 0.1,
            w * 0.1);
    }
    painter.end();
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    image.save(&buffer, format, 90);
    return bytes;
}

namespace {

Figure figure(const QString &caption, QSize size, int seed)
{
    Figure result;
    result.image.bytes = photo(size, seed);
    result.caption = caption;
    return result;
}

const Mark kHv{MarkKind::HighVoltage, QString()};
const Mark kHolds{MarkKind::Holds, QString()};
const Mark kTight{MarkKind::Tight, QString()};
const Mark kFails{MarkKind::Fails, QString()};
const Mark kUnknown{MarkKind::Unknown, QString()};

Table ratings()
{
    Table table;
    table.caption = "Ratings of the traction circuit";
    table.columns = {{"Part", Align::Left, 4},
                     {"Rating", Align::Left, 3},
                     {"Limit", Align::Decimal, 0},
                     {"Worst case", Align::Decimal, 0},
                     {"State", Align::Left, 2}};
    table.rows = {
        {{{"Inverter, from donor 1", {}, {kHv}}}, RowKind::Group},
        {{{"Power stage"},
          {"DC link voltage, continuous"},
          {"450 V", "nameplate, read 3 Mar 2026"},
          {"403.2 V"},
          {{}, {}, {kHolds}}},
         RowKind::Plain},
        {{{"Power stage"},
          {"Phase current, 60 s"},
          {"280 A", "service manual, section 7"},
          {"271.5 A"},
          {{}, {}, {kTight}}},
         RowKind::Plain},
        {{{"Cooling plate"},
          {"Heat carried at 8 l/min"},
          {"3.75 kW", "community figure; not measured"},
          {"unknown"},
          {{}, {}, {kUnknown}}},
         RowKind::Plain},
        {{{"Cabin heater, from donor 2", {}, {kHv}}}, RowKind::Group},
        {{{"Heater relay, inside the heater, reached by the cover under the left bracket"},
          {"Contact voltage, DC"},
          {"380 V", "datasheet, page 4"},
          {"403.2 V"},
          {"see open point 2", {}, {kFails}}},
         RowKind::Plain},
        {{{"Element"}, {"Power"}, {"5 kW", "nameplate"}, {"4.8 kW"}, {{}, {}, {kHolds}}},
         RowKind::Plain},
    };
    return table;
}

Table conductors()
{
    Table table;
    table.caption = "Conductors and fuses";
    table.columns = {{"From", Align::Left, 0},       {"To", Align::Left, 0},
                     {"Section", Align::Decimal, 0}, {"Length", Align::Decimal, 0},
                     {"Current", Align::Decimal, 0}, {"Fuse", Align::Decimal, 0},
                     {"Screened", Align::Left, 0}};
    table.rows = {
        {{{"Front pack, positive", {}, {kHv}},
          {"Contactor box"},
          {"50 mm²"},
          {"1.85 m"},
          {"271.5 A", "60 s"},
          {"350 A"},
          {"yes"}}},
        {{{"Contactor box", {}, {kHv}},
          {"Inverter"},
          {"50 mm²"},
          {"0.6 m"},
          {"271.5 A"},
          {"350 A"},
          {"yes"}}},
        {{{"Contactor box", {}, {kHv}},
          {"Cabin heater"},
          {"4 mm²"},
          {"2.25 m"},
          {"12.5 A"},
          {"20 A"},
          {"yes"}}},
        {{{"Converter"}, {"12 V battery"}, {"35 mm²"}, {"1.1 m"}, {"108 A"}, {"150 A"}, {"no"}}},
        {{{"12 V battery"},
          {"Brake vacuum pump"},
          {"2.5 mm²"},
          {"0.95 m"},
          {"9.25 A"},
          {"15 A"},
          {"no"}}},
    };
    return table;
}

Table masses()
{
    Table table;
    table.caption = "Masses";
    table.columns = {{"Item", Align::Left, 5},
                     {"Taken out", Align::Decimal, 2},
                     {"Put in", Align::Decimal, 2},
                     {"Source", Align::Left, 3}};
    table.rows = {
        {{{"Engine with ancillaries"}, {"148.5 kg"}, {}, {"weighed"}}},
        {{{"Fuel tank, full"}, {"41 kg"}, {}, {"weighed"}}},
        {{{"Exhaust"}, {"17.25 kg"}, {}, {"weighed"}}},
        {{{"Motor and adapter"}, {}, {"62.4 kg"}, {"weighed"}}},
        {{{"Traction battery with boxes", {}, {kHv}},
          {},
          {"1 212.75 kg"},
          {"modules weighed, boxes computed"}}},
        {{{"Together"}, {"206.75 kg"}, {"1 275.15 kg"}, {}}, RowKind::Total},
    };
    return table;
}

} // namespace

Table longTable(int rows)
{
    Table table;
    table.caption = "Wire list";
    table.columns = {{"Wire", Align::Left, 1},
                     {"Route", Align::Left, 4},
                     {"Length", Align::Decimal, 2},
                     {"Colour", Align::Left, 2}};
    for (int i = 1; i <= rows; ++i) {
        if (i % 40 == 1)
            table.rows.push_back(
                {{{QStringLiteral("Loom branch %1").arg(i / 40 + 1)}}, RowKind::Group});
        Row row;
        row.cells = {{QStringLiteral("W%1").arg(i)},
                     {QStringLiteral("cavity %1 to cavity %2").arg(i).arg(i * 3 % 97),
                      i % 5 == 0
                          ? QStringLiteral("traced on %1 Mar 2026\nfrom both ends").arg(i % 28 + 1)
                          : QString()},
                     {QStringLiteral("%1.%2 m").arg(i * 7 % 23).arg(i % 10)},
                     {i % 3 == 0 ? QStringLiteral("orange") : QStringLiteral("black")}};
        table.rows.push_back(row);
    }
    return table;
}

Document sampleDocument()
{
    Document d;
    d.title = "Build sheet: Norrel Kurier 1300";
    d.subtitle = "Light van, petrol to electric, gearbox kept";
    d.revision = "Revision 4, 3 Mar 2026";
    d.footer = "Computed from what was entered. It replaces no inspection and no qualified person.";
    d.blocks = {
        Contents{2},
        Caution{
            "High voltage, also after switching off",
            {"The traction battery stays live inside whatever is switched. Capacitors hold their "
             "charge after the contactors open; wait, then prove absence of voltage.",
             "Only people trained for it open orange-marked covers. Never alone."},
            true},
        Heading{1, "Vehicle", "vehicle"},
        KeyValues{
            {{"Make and model", "Norrel Kurier 1300 panel van", {}, {}},
             {"Identification number",
              "NK13-0O1I-7781220",
              "plate in the engine bay, photographed as it came",
              {},
              Emphasis::Exact},
             {"First registered", "14 Jun 1979", "registration document", {}},
             {"Mass as it came", "985 kg", "weighbridge ticket of 2 Feb 2025, in four corners", {}},
             {"Approval",
              "individual, letter of 12 Jan 2025",
              {},
              {{MarkKind::Holds, "asked first"}}}}},
        Heading{2, "Donors", {}},
        Table{"",
              {{"Donor", Align::Left, 0},
               {"Vehicle", Align::Left, 3},
               {"Year", Align::Right, 0},
               {"Distance", Align::Decimal, 0},
               {"Parts used", Align::Left, 4}},
              {{{{"1"},
                 {"Orva Lumen hybrid", "front damage"},
                 {"2019"},
                 {"61 200 km"},
                 {"inverter, converter, contactor box"}}},
               {{{"2"},
                 {"Tessal Uno", "flood line under the seats; electronics not taken"},
                 {"2021"},
                 {"18 450 km"},
                 {"cabin heater, charge inlet"}}},
               {{{"3"},
                 {"Orva Lumen hybrid", "rear damage"},
                 {"2018"},
                 {"104 000 km"},
                 {"36 battery modules"}}}},
              {}},
        Heading{1, "Traction system", "traction"},
        Paragraph{{{"One hundred and eight cells in series, taken from donor 3 and matched by "
                    "capacity and resistance. ",
                    Emphasis::None,
                    {}},
                   {"Full charge is 453.6 V, which is more than the nominal 388.8 V plated on the "
                    "inverter's box. ",
                    Emphasis::Strong,
                    {}},
                   {"Module serial ", Emphasis::None, {}},
                   {"0O1Il-88B0-Z2", Emphasis::Exact, {}},
                   {" was replaced after the self-discharge test. ", Emphasis::None, {}},
                   {"Every limit below is held against the worst voltage of its circuit, not the "
                    "nominal one.",
                    Emphasis::Muted,
                    {}}}},
        ratings(),
        conductors(),
        Heading{2, "What the verdicts mean", {}},
        Paragraph{
            {{"worst case under the limit with the margin asked for; ", Emphasis::None, kHolds},
             {"under the limit with less; ", Emphasis::None, kTight},
             {"over it; ", Emphasis::None, kFails},
             {"a figure is missing; ", Emphasis::None, kUnknown},
             {"high voltage.", Emphasis::None, kHv}}},
        Heading{1, "Masses", {}},
        masses(),
        Heading{1, "Photos", "photos"},
        Heading{2, "As it came", {}},
        FigureRow{{figure("Engine bay before anything was taken out", {800, 600}, 1),
                   figure("Chassis plate", {800, 533}, 2),
                   figure("Left sill with the repair of 1991; the weld is continuous and was seen "
                          "by the inspector before priming",
                          {600, 800}, 3),
                   figure("Corner weights", {800, 600}, 4)},
                  2},
        Heading{2, "Battery boxes", {}},
        FigureRow{{figure("Front", {800, 600}, 5), figure("Middle", {800, 600}, 6),
                   figure("Rear", {800, 600}, 7)},
                  3},
        figure("Contactor box, cover off, not yet connected", {1000, 600}, 8),
        Heading{1, "Open points", "open"},
        List{ListKind::Numbers,
             {{"Heat carried by the cooling plate is not known.",
               "holds up the first drive; measure at 8 l/min",
               {kUnknown}},
              {"Heater relay is rated under full charge.", "relay to be replaced", {kFails, kHv}},
              {"Letter from the insurer is not in yet.", {}, {}}}},
        Heading{3, "To be looked at on the day", {}},
        List{ListKind::TickBoxes,
             {{"Isolation resistance, pack connected", "voltmeter method", {}},
              {"Bonding of every box to the body", {}, {}},
              {"Inertia switch opens the contactors", {}, {}}}},
        List{ListKind::Bullets,
             {{"Orange conduit on the whole run under the floor", {}, {}},
              {"Rescue card behind the sun visor", {}, {}}}},
        Caution{"Batteries burn and re-ignite", {"Quarantine damaged modules outdoors."}, false},
        Heading{1, "Signatures", {}},
        Signatures{{{"Builder", "I built the vehicle as described here.", "M. EXEMPEL"},
                    {"Inspector", "I have seen the vehicle and this sheet.", {}}}},
    };
    d.contentHash = contentHash(d);
    return d;
}

} // namespace ohmwright::sheet
