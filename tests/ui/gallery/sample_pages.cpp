// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/ui/gallery/sample_pages.h"

#include "ui/shell/drafted_style.h"
#include "ui/shell/theme.h"
#include "ui/widgets/caution_card.h"
#include "ui/widgets/chip_row.h"
#include "ui/widgets/drafted_table_delegate.h"
#include "ui/widgets/drop_area.h"
#include "ui/widgets/empty_page.h"
#include "ui/widgets/field.h"
#include "ui/widgets/figure_label.h"
#include "ui/widgets/hv_tag.h"
#include "ui/widgets/icons.h"
#include "ui/widgets/money_bar.h"
#include "ui/widgets/pick_or_new.h"
#include "ui/widgets/section_title.h"
#include "ui/widgets/state_mark.h"

#include <QCheckBox>
#include <QComboBox>
#include <QDateEdit>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPlainTextEdit>
#include <QProgressBar>
#include <QPushButton>
#include <QRadioButton>
#include <QSpinBox>
#include <QSplitter>
#include <QStandardItemModel>
#include <QTabBar>
#include <QTableView>
#include <QToolButton>
#include <QVBoxLayout>

namespace ohmwright::ui {

namespace {

QVBoxLayout *pageLayout(QWidget *page)
{
    auto *column = new QVBoxLayout(page);
    column->setContentsMargins(24, 18, 24, 18);
    column->setSpacing(12);
    return column;
}

struct Row
{
    const char *name, *second, *rating, *price, *where;
    Mark mark;
    bool highVoltage;
};

QStandardItemModel *sampleParts(QObject *parent)
{
    const std::initializer_list<Row> rows{
        {"Inverter, front axle", "Arlo Vento 2019, 61 000 km", "403 V", "412.50 EUR", "shelf 3",
         Mark::Tested, true},
        {"Battery module 1 of 12", "Arlo Vento 2019, 61 000 km", "33.6 V", "140.00 EUR", "cabinet",
         Mark::InHand, true},
        {"Vacuum pump with tank", "three offers seen", "12.5 V", "85.00 EUR", "", Mark::Wanted,
         false},
        {"Charger 6.6 kW", "Kestrel Dray 2021, rear hit", "450 V", "265.00 EUR", "on its way",
         Mark::Ordered, true},
        {"Coupling blank, C45", "turned by the workshop in the valley", "", "118.75 EUR", "van",
         Mark::Fitted, false},
        {"Contactor, main +", "coil 12 V, no mating connector", "unknown", "32.00 EUR", "box 7",
         Mark::Quarantined, true},
        {"Cabin heater", "underrated relay inside", "380 V", "96.20 EUR", "box 2", Mark::Returned,
         true},
        {"Old engine, 1.6 petrol", "as it came out", "", "-450.00 EUR", "", Mark::Sold, false},
        {"Radiator fan", "blade cracked", "12 V", "0.00 EUR", "", Mark::Scrapped, false},
    };
    auto *model = new QStandardItemModel(parent);
    model->setHorizontalHeaderLabels({"Part", "State", "Limit", "Landed", "Where"});
    for (const int column : {2, 3})
        model->setHeaderData(column, Qt::Horizontal, int(Qt::AlignRight | Qt::AlignVCenter),
                             Qt::TextAlignmentRole);
    for (const Row &row : rows) {
        auto *name = new QStandardItem(QString::fromUtf8(row.name));
        name->setData(QString::fromUtf8(row.second), SecondLineRole);
        name->setData(row.highVoltage, HighVoltageRole);
        auto *state = new QStandardItem;
        state->setData(QVariant::fromValue(row.mark), MarkRole);
        auto *rating = new QStandardItem;
        rating->setData(QString::fromUtf8(row.rating), FigureRole);
        auto *price = new QStandardItem;
        price->setData(QString::fromUtf8(row.price), FigureRole);
        model->appendRow({name, state, rating, price, new QStandardItem(row.where)});
    }
    return model;
}

QWidget *makeDetail(const Theme &theme)
{
    auto *detail = new QWidget;
    auto *column = new QVBoxLayout(detail);
    column->setContentsMargins(14, 0, 0, 0);
    column->setSpacing(10);
    auto *title = new SectionTitle(theme, "Inverter, front axle");
    title->addAtEnd(new HvTag(theme));
    column->addWidget(title);
    column->addWidget(new StateMark(theme, Mark::Tested));
    auto *grid = new QGridLayout;
    grid->setHorizontalSpacing(16);
    grid->setVerticalSpacing(7);
    const std::initializer_list<std::pair<const char *, const char *>> ratings{
        {"DC link, limit", "403 V"},
        {"Phase current, 30 s", "340.5 A"},
        {"Mass", "11.25 kg"},
        {"Coolant flow", "unknown"}};
    int line = 0;
    for (const auto &[what, figure] : ratings) {
        grid->addWidget(new QLabel(what), line, 0);
        auto *label = new FigureLabel(theme);
        label->setDecimals(2);
        label->setUnitRoom("kg");
        label->setFigure(figure);
        grid->addWidget(label, line++, 1);
    }
    grid->setColumnStretch(0, 1);
    column->addLayout(grid);
    for (const Mark mark : {Mark::Holds, Mark::Tight, Mark::Fails, Mark::Unknown})
        column->addWidget(new StateMark(theme, mark));
    auto *caution = new CautionCard(theme, "bought units can arrive charged",
                                    {"Capacitors hold their voltage after switching off.",
                                     "Measure before touching, whatever was computed."});
    caution->setHighVoltage(true);
    column->addWidget(caution);
    column->addStretch(1);
    return detail;
}

} // namespace

QWidget *makeTablePage(const Theme &theme)
{
    auto *page = new QWidget;
    auto *column = pageLayout(page);
    auto *title = new SectionTitle(theme, "Parts", TitleLevel::Page);
    title->setRemark("61 parts, 4 open questions");
    auto *log = new QPushButton(themedIcon(theme, "add"), "Log a part");
    makePrimary(*log);
    title->addAtEnd(log);
    column->addWidget(title);
    auto *chips = new ChipRow(theme, "State");
    for (const Mark mark : {Mark::Wanted, Mark::Ordered, Mark::InHand, Mark::Tested, Mark::Fitted,
                            Mark::Returned, Mark::Sold, Mark::Scrapped, Mark::Quarantined})
        chips->addChip(markWord(mark), markWord(mark), mark == Mark::Tested);
    chips->setCount(markWord(Mark::InHand), 12);
    chips->setCount(markWord(Mark::Wanted), 7);
    column->addWidget(chips);

    auto *table = new QTableView;
    auto *delegate = new DraftedTableDelegate(theme, table);
    delegate->setFigureColumn(2, 1, "V");
    delegate->setFigureColumn(3, 2, "EUR");
    table->setModel(sampleParts(table));
    delegate->dress(*table, true);
    table->setSortingEnabled(true);
    table->setColumnWidth(0, 250);
    table->setColumnWidth(1, 128);
    table->setColumnWidth(2, 84);
    table->setColumnWidth(3, 128);
    table->setCurrentIndex(table->model()->index(1, 0));

    auto *splitter = new QSplitter;
    splitter->addWidget(table);
    splitter->addWidget(makeDetail(theme));
    splitter->setStretchFactor(0, 3);
    splitter->setStretchFactor(1, 1);
    splitter->setSizes({730, 330});
    column->addWidget(splitter, 1);
    return page;
}

QWidget *makeFormPage(const Theme &theme)
{
    auto *page = new QWidget;
    auto *column = pageLayout(page);
    column->addWidget(new SectionTitle(theme, "Log a part", TitleLevel::Page));
    auto *grid = new QGridLayout;
    grid->setHorizontalSpacing(18);
    grid->setVerticalSpacing(10);
    auto *name = new Field(theme, "&Name", new QLineEdit("Inverter, front axle"));
    auto *seller = new PickOrNew(theme);
    seller->setKnown({{"s1", "Müller Autoverwertung", "dismantler, 3 parts"},
                      {"s2", "Hafen Salvage", "insurance auction"}});
    seller->setNewName("Garage in the valley");
    auto *sellerField = new Field(theme, "&Seller", seller);
    auto *price = new Field(theme, "&Price", new QLineEdit("412,5o"));
    price->setProblem("“412,5o” is not an amount of money. Write it as 412.50 EUR.");
    auto *kind = new QComboBox;
    kind->addItems({"unit", "module", "tool", "consumable", "service"});
    auto *date = new QDateEdit(QDate(2026, 3, 1));
    date->setCalendarPopup(true);
    date->setDisplayFormat("yyyy-MM-dd");
    auto *limit = new Field(theme, "DC &limit", new QLineEdit);
    limit->setHint("As on the nameplate: 403 V DC");
    grid->addWidget(name, 0, 0);
    grid->addWidget(new Field(theme, "&Kind", kind), 0, 1);
    grid->addWidget(sellerField, 1, 0);
    grid->addWidget(new Field(theme, "&Bought on", date), 1, 1);
    grid->addWidget(price, 2, 0);
    grid->addWidget(limit, 2, 1);
    grid->setColumnStretch(0, 3);
    grid->setColumnStretch(1, 2);
    column->addLayout(grid);
    column->addWidget(new SectionTitle(theme, "Condition and photos"));
    auto *notes = new QPlainTextEdit("Scratches on the cover, all plugs cut short.");
    notes->setMaximumHeight(80);
    column->addWidget(new Field(theme, "N&otes", notes));
    auto *drop = new DropArea(theme);
    QImage picture(64, 64, QImage::Format_RGB32);
    picture.fill(theme.tokens().mute);
    drop->setPictures({picture, picture});
    column->addWidget(drop);
    column->addWidget(
        new CautionCard(theme, "petrol vapour and hot work",
                        {"Drain and vent the tank outdoors before any cutting or grinding nearby.",
                         "Local rules and licensed people decide how."}));
    column->addStretch(1);
    auto *buttons = new QHBoxLayout;
    buttons->addStretch(1);
    buttons->addWidget(new QPushButton("Put aside"));
    auto *save = new QPushButton(themedIcon(theme, "done"), "Save, next one");
    makePrimary(*save);
    buttons->addWidget(save);
    column->addLayout(buttons);
    return page;
}

QWidget *makeMoneyPage(const Theme &theme)
{
    auto *page = new QWidget;
    auto *column = pageLayout(page);
    auto *title = new SectionTitle(theme, "Budget", TitleLevel::Page);
    title->setRemark("in EUR, of 14 500.00 set aside");
    column->addWidget(title);
    auto *figure = new FigureLabel(theme);
    figure->setLettering(Lettering::Figure);
    figure->setFigure("3 117.45 EUR");
    column->addWidget(figure, 0, Qt::AlignLeft);
    column->addWidget(new SectionTitle(theme, "Lines"));
    auto *grid = new QGridLayout;
    grid->setHorizontalSpacing(20);
    grid->setVerticalSpacing(9);
    struct Line
    {
        const char *name = "";
        MoneyShares shares = {};
        const char *spent = "", *left = "";
    };
    const std::initializer_list<Line> lines{
        {"Traction", {310000, 90000, 120000, 600000}, "3 100.00 EUR", "800.00 EUR"},
        {"Battery", {180000, 60000, 140000, 340000}, "1 800.00 EUR", "-400.00 EUR"},
        {"Machining", {0, 0, 85000, 90000}, "0.00 EUR", "50.00 EUR"},
        {"Papers and inspection", {22000, 0, 30000, 60000}, "220.00 EUR", "80.00 EUR"},
        {"Consumables", {9950, 0, 0, 30000}, "99.50 EUR", "200.50 EUR"},
    };
    int row = 0;
    for (const Line &line : lines) {
        grid->addWidget(new QLabel(line.name), row, 0);
        auto *bar = new MoneyBar(theme);
        bar->setShares(line.shares, QString("%1 spent").arg(line.spent), 600000);
        grid->addWidget(bar, row, 1);
        int at = 2;
        for (const char *text : {line.spent, line.left}) {
            auto *label = new FigureLabel(theme);
            label->setDecimals(2);
            label->setFigure(text);
            grid->addWidget(label, row, at++);
        }
        ++row;
    }
    grid->setColumnStretch(1, 1);
    column->addLayout(grid);
    column->addWidget(new MoneyBarLegend(theme));
    column->addStretch(1);
    return page;
}

QWidget *makeControlsPage(const Theme &theme)
{
    auto *page = new QWidget;
    auto *column = pageLayout(page);
    auto *title = new SectionTitle(theme, "Checks", TitleLevel::Page);
    title->setRemark("every control once, and every mark");
    column->addWidget(title);
    auto *tabs = new QTabBar;
    tabs->setExpanding(false);
    for (const char *text : {"&All", "&Circuits", "C&onductors", "&Mass"})
        tabs->addTab(text);
    column->addWidget(tabs);

    auto *buttons = new QHBoxLayout;
    auto *primary = new QPushButton("Primary");
    makePrimary(*primary);
    auto *off = new QPushButton("Unavailable");
    off->setEnabled(false);
    auto *offPrimary = new QPushButton("Primary, off");
    makePrimary(*offPrimary);
    offPrimary->setEnabled(false);
    auto *pressed = new QPushButton("Held");
    pressed->setCheckable(true);
    pressed->setChecked(true);
    for (QWidget *widget : std::initializer_list<QWidget *>{
             primary, new QPushButton("Plain"),
             new QPushButton(themedIcon(theme, "photo"), "With icon"), pressed, off, offPrimary})
        buttons->addWidget(widget);
    buttons->addStretch(1);
    column->addLayout(buttons);

    auto *ticks = new QHBoxLayout;
    auto *on = new QCheckBox("Ticked");
    on->setChecked(true);
    auto *half = new QCheckBox("Partly");
    half->setTristate(true);
    half->setCheckState(Qt::PartiallyChecked);
    auto *offTick = new QCheckBox("Unavailable");
    offTick->setEnabled(false);
    auto *radio = new QRadioButton("DC");
    radio->setChecked(true);
    for (QWidget *widget : std::initializer_list<QWidget *>{on, new QCheckBox("Not"), half, offTick,
                                                            radio, new QRadioButton("AC")})
        ticks->addWidget(widget);
    ticks->addStretch(1);
    column->addLayout(ticks);

    auto *inputs = new QHBoxLayout;
    auto *combo = new QComboBox;
    combo->addItems({"datasheet", "nameplate", "measured"});
    auto *editable = new QComboBox;
    editable->setEditable(true);
    editable->addItems({"traction", "charge inlet"});
    auto *spin = new QSpinBox;
    spin->setSuffix(" cells");
    spin->setRange(0, 200);
    spin->setValue(96);
    auto *readOnly = new QLineEdit("computed, not typed");
    readOnly->setReadOnly(true);
    auto *offLine = new QLineEdit("unavailable");
    offLine->setEnabled(false);
    for (QWidget *widget :
         std::initializer_list<QWidget *>{combo, editable, spin, readOnly, offLine})
        inputs->addWidget(widget);
    column->addLayout(inputs);
    auto *progress = new QProgressBar;
    progress->setValue(40);
    progress->setTextVisible(false);
    progress->setMaximumHeight(14);
    column->addWidget(progress);

    column->addWidget(new SectionTitle(theme, "Marks"));
    auto *marks = new QGridLayout;
    marks->setVerticalSpacing(8);
    int at = 0;
    for (const Mark mark : allMarks()) {
        marks->addWidget(new StateMark(theme, mark), at / 5, at % 5);
        ++at;
    }
    column->addLayout(marks);
    column->addWidget(new SectionTitle(theme, "Icons"));
    auto *icons = new QGridLayout;
    int place = 0;
    for (const char *name :
         {"bench",   "parts", "build_order", "budget",   "checks",   "sheet",
          "find",    "undo",  "redo",        "add",      "remove",   "photo",
          "link",    "done",  "sun",         "moon",     "book",     "close",
          "caution", "note",  "file",        "send_out", "question", "chevron_down"}) {
        auto *button = new QToolButton;
        button->setAutoRaise(true);
        button->setIcon(themedIcon(theme, name));
        button->setIconSize(QSize(24, 24));
        button->setToolTip(name);
        button->setAccessibleName(name);
        icons->addWidget(button, place / 12, place % 12);
        ++place;
    }
    icons->setColumnStretch(12, 1);
    column->addLayout(icons);
    column->addStretch(1);
    return page;
}

QWidget *makeEmptyPage(const Theme &theme)
{
    return new EmptyPage(
        theme, "build_order", "No tasks yet",
        "The build order says what must be done before what, from teardown to road-ready. Start "
        "from a network made for your kind of drivetrain; everything in it can be changed.",
        "Take a starter network");
}

} // namespace ohmwright::ui
