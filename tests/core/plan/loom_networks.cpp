// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/plan/loom_networks.h"

#include <algorithm>
#include <map>
#include <random>

namespace ohmwright::plan {

namespace {

struct Row
{
    const char *key;
    const char *title;
    const char *flags; // d done, s started, h high voltage, m milestone
    const char *after;
};

// The first two letters of a key are its area.
const std::map<QString, QString> &areaNames()
{
    static const std::map<QString, QString> names{{"ba", "battery"},
                                                  {"bo", "body & chassis"},
                                                  {"br", "brakes & steering"},
                                                  {"ch", "charging"},
                                                  {"cl", "cooling & heating"},
                                                  {"lv", "12 V & signals"},
                                                  {"mg", "motor & gearbox"},
                                                  {"od", "old drivetrain"},
                                                  {"pa", "papers"},
                                                  {"tc", "traction cables"},
                                                  {"zz", ""}};
    return names;
}

const Row kVan[] = {
    {"pa01", "Ask the authority", "d", ""},
    {"pa02", "Ask two insurers", "d", "pa01"},
    {"pa03", "Choose an engineer", "d", "pa01"},
    {"pa04", "Scheme agreed in writing", "d", "pa03"},
    {"pa05", "Engineer's first visit", "d", "pa04 bo03"},
    {"pa06", "High-voltage training", "d", "pa01"},
    {"pa07", "Brake letter", "", "pa05 br03"},
    {"pa08", "Battery box drawings signed", "s", "pa05 ba08"},
    {"pa09", "Insurance agreed in writing", "", "pa02 pa08"},
    {"pa10", "Engineer's second visit", "", "pa08 ba15 br09"},
    {"pa11", "Isolation test witnessed", "", "pa10 tc13"},
    {"pa12", "Build sheet printed", "", "pa11 bo14 pa07"},
    {"pa13", "Emergency card in the van", "", "tc12 ba15"},
    {"pa14", "Inspection day", "", "pa12 pa13 lv14 br12 pa09"},
    {"bo01", "Photos as it came", "d", ""},
    {"bo02", "Weigh as bought, four corners", "d", ""},
    {"bo03", "Rust survey", "d", "bo01"},
    {"bo04", "Strip the load bay", "d", "bo02 bo01"},
    {"bo05", "Sill repair", "d", "bo03 bo04 pa04"},
    {"bo06", "Measure the bay", "d", "bo04 od09"},
    {"bo07", "Tray and cradle drawn", "d", "bo06 mg03 ba05"},
    {"bo08", "Tray and cradle cut", "s", "bo07 pa05"},
    {"bo09", "Battery tray welded", "", "bo08 bo05"},
    {"bo10", "Cradle welded", "", "bo08"},
    {"bo11", "Paint tray and cradle", "", "bo09 bo10"},
    {"bo12", "Underbody guards", "", "bo11 tc08 cl08"},
    {"bo13", "Load bay floor back", "", "ba16 bo12"},
    {"bo14", "Weigh as built", "", "bo13 tc14 lv12 cl12"},
    {"bo15", "Suspension set for the mass", "", "bo14"},
    {"od01", "Run it once more, note faults", "d", ""},
    {"od02", "Drain fuel, air out", "d", "od01"},
    {"od03", "Refrigerant by a licensed firm", "d", "od01"},
    {"od04", "Tank out", "d", "od02"},
    {"od05", "Exhaust off", "d", "od01"},
    {"od06", "Label the loom", "d", "od01"},
    {"od07", "Drain coolant and oil", "d", "od02"},
    {"od08", "Hoist and stands checked", "d", ""},
    {"od09", "Engine out", "d", "od04 od05 od06 od07 od08 od03 pa04"},
    {"od10", "Gearbox off the engine", "d", "od09"},
    {"od11", "Clean the bay", "d", "od09"},
    {"od12", "Sell the engine", "s", "od10"},
    {"od13", "Sell tank and exhaust", "d", "od04 od05"},
    {"mg01", "Test the donor motor", "d", "pa06"},
    {"mg02", "Measure bell face", "d", "od10"},
    {"mg03", "Motor position drawn", "d", "mg01 mg02 od11"},
    {"mg04", "Adapter plate drawn", "d", "mg03"},
    {"mg05", "Adapter plate cut", "d", "mg04"},
    {"mg06", "Coupling drawn", "d", "mg02 mg01"},
    {"mg07", "Coupling machined", "", "mg06"},
    {"mg08", "Clutch and flywheel weighed", "d", "od10"},
    {"mg09", "Dial in the coupling", "", "mg05 mg07"},
    {"mg10", "Join motor and gearbox", "", "mg09 mg08"},
    {"mg11", "Mounts drawn", "d", "mg04 bo06"},
    {"mg12", "Mounts welded", "", "mg11 bo10"},
    {"mg13", "Unit into the van", "", "mg10 mg12 bo11"},
    {"mg14", "Shafts and gear linkage", "", "mg13"},
    {"mg15", "Gearbox oil, reverse lamp", "", "mg13"},
    {"mg16", "Inverter pairing known", "s", "mg01"},
    {"mg17", "Motor turns unloaded", "h", "mg16 mg10 tc06"},
    {"ba01", "Collect the pack", "dh", "pa06 pa04"},
    {"ba02", "Module photos and numbers", "dh", "ba01"},
    {"ba03", "Rest three weeks", "dh", "ba02"},
    {"ba04", "Capacity test 24 modules", "dh", "ba02"},
    {"ba05", "Module layout chosen", "d", "ba04 ba03"},
    {"ba06", "Group the modules", "h", "ba05"},
    {"ba07", "Quarantine two modules", "dh", "ba04"},
    {"ba08", "Box drawn", "d", "ba05 bo06"},
    {"ba09", "Box welded", "", "ba08 pa08"},
    {"ba10", "Box seals and vent", "", "ba09"},
    {"ba11", "Monitor boards fitted", "h", "ba06"},
    {"ba12", "Busbars and covers", "h", "ba06"},
    {"ba13", "Contactor box wired", "h", "ba08"},
    {"ba14", "Pack built", "h", "ba10 ba11 ba12 ba13"},
    {"ba15", "Pack on the bench load", "h", "ba14 lv05"},
    {"ba16", "Pack in", "h", "ba15 bo11"},
    {"ba17", "Pack bolts marked", "h", "ba16"},
    {"tc01", "One-line diagram", "dh", "mg01 ba05"},
    {"tc02", "Cable sizes and fuses", "dh", "tc01"},
    {"tc03", "Order cable and glands", "h", "tc02"},
    {"tc04", "Service disconnect place", "dh", "tc01 bo06"},
    {"tc05", "Crimp test pieces pulled", "h", "tc03"},
    {"tc06", "Bench cables made", "h", "tc05"},
    {"tc07", "Route and clip conduit", "h", "tc04 bo11"},
    {"tc08", "Traction cables made", "h", "tc05 tc07"},
    {"tc09", "Precharge set and timed", "h", "ba13"},
    {"tc10", "Interlock loop closed", "h", "tc08 lv07 mg13"},
    {"tc11", "Isolation monitor fitted", "h", "ba16 tc08"},
    {"tc12", "Orange covers and labels", "h", "tc08"},
    {"tc13", "Isolation measured, pack off", "h", "tc10 tc11 tc12 ch08"},
    {"tc14", "First energise", "h", "tc13 tc09 lv10 cl10 mg14"},
    {"ch01", "Charge inlet chosen", "d", "pa04"},
    {"ch02", "Donor charger's plug known", "", "ch01"},
    {"ch03", "Inlet bracket", "d", "ch01 bo05"},
    {"ch04", "Inlet in the old filler", "", "ch03 od13"},
    {"ch05", "Charger in its place", "h", "ch02 bo10"},
    {"ch06", "Pilot signal wired", "", "ch04 ch02"},
    {"ch07", "Charger on the bench", "h", "ch02 lv04"},
    {"ch08", "Inlet to charger cable", "h", "ch04 ch05 tc05"},
    {"ch09", "House socket by an electrician", "", "ch01"},
    {"ch10", "Charge at low current", "h", "ch06 ch07 ch09 tc14"},
    {"ch11", "Charge to full, log cells", "h", "ch10"},
    {"ch12", "Frost limit set", "", "ch11"},
    {"lv01", "Wire list from the old loom", "d", "od06"},
    {"lv02", "Keep and cut list", "d", "lv01"},
    {"lv03", "Controller chosen", "d", "mg16"},
    {"lv04", "Bench supply and messages", "s", "lv03"},
    {"lv05", "Monitor talks to controller", "", "lv04 ba11"},
    {"lv06", "12 V fuse box", "d", "lv02"},
    {"lv07", "New loom laid and laced", "", "lv06 lv03 bo05"},
    {"lv08", "Converter in its place", "h", "lv06 bo10"},
    {"lv09", "Pedal and selector", "", "lv07"},
    {"lv10", "Wake-up and shut-down tried", "", "lv09 lv08 lv05"},
    {"lv11", "Speed signal for the gauge", "", "lv07 mg14"},
    {"lv12", "Dash lamps and gauge", "", "lv11 lv10"},
    {"lv13", "Inertia switch", "", "lv07"},
    {"lv14", "Lamps and horn checked", "", "lv12 lv13"},
    {"cl01", "Survey the heater", "d", "bo04"},
    {"cl02", "Heat to carry away", "d", "mg01 tc01"},
    {"cl03", "Choose pump and radiator", "", "cl02"},
    {"cl04", "Radiator brackets", "", "cl03 od11"},
    {"cl05", "Electric heater tested", "h", "cl01"},
    {"cl06", "Heater in the old case", "h", "cl05"},
    {"cl07", "Hoses drawn and bought", "", "cl04 mg11"},
    {"cl08", "Coolant loop laid", "", "cl07 mg13"},
    {"cl09", "Loop pressure test", "", "cl08"},
    {"cl10", "Coolant filled and bled", "", "cl09 lv08"},
    {"cl11", "Demist tried", "h", "cl06 tc14"},
    {"cl12", "Fan and pump on signals", "", "cl10 lv10"},
    {"br01", "Brakes as found, figures", "d", "bo02"},
    {"br02", "New masses estimated", "d", "bo02 ba05 mg01"},
    {"br03", "Brake balance computed", "d", "br01 br02"},
    {"br04", "Vacuum pump chosen", "", "br03"},
    {"br05", "Pump bracket and hose", "", "br04 bo10"},
    {"br06", "New discs and pads", "", "br03"},
    {"br07", "Brake lines renewed", "d", "br01 bo05"},
    {"br08", "Steering pump, electric", "", "br01 lv06"},
    {"br09", "Brakes bled", "", "br05 br06 br07"},
    {"br10", "Steering bled, lock to lock", "", "br08"},
    {"br11", "Vacuum falls as wanted", "", "br09 lv10"},
    {"br12", "Brake test on the roller", "", "br11 br10 bo15 zz05"},
    {"zz01", "Approval in principle", "dm", "pa04 pa02 pa06"},
    {"zz02", "Engine bay empty", "dm", "od11 od10 od13"},
    {"zz03", "Motor turns on the bench", "mh", "mg17 mg16"},
    {"zz04", "Pack ready to go in", "mh", "ba15 bo11 pa08"},
    {"zz05", "Drives under own power", "mh", "tc14 mg14 mg15 br11 br10 lv12"},
    {"zz06", "Road-ready", "m", "pa14 ch12 cl11 od12 bo15 ba17 ba07 ch11"},
};

struct NeedRow
{
    NeedKind kind;
    MoveKind move;
    const char *subject;
    const char *reason;
};

const NeedRow kNeeds[] = {
    {NeedKind::Part, MoveKind::Order, "coupling blank", "no offer taken yet"},
    {NeedKind::Part, MoveKind::Order, "conduit", "wanted, 12 m"},
    {NeedKind::Part, MoveKind::Chase, "busbars", "ordered 2 Nov, 3 weeks late"},
    {NeedKind::Part, MoveKind::Order, "vacuum pump", "three offers"},
    {NeedKind::Figure, MoveKind::FindOut, "flow the heater needs", "not in the papers"},
    {NeedKind::Figure, MoveKind::FindOut, "charger's wake signal", "nobody has written it down"},
    {NeedKind::Letter, MoveKind::Chase, "engineer's letter", "asked 3 Nov, no answer"},
    {NeedKind::Tool, MoveKind::Order, "hydraulic crimper", "to borrow"},
    {NeedKind::Consumable, MoveKind::Order, "sealant", "half a tube left"},
    {NeedKind::Money, MoveKind::Pay, "deposit for the box", "due on order"},
    {NeedKind::Service, MoveKind::Order, "laser cutting", "drawing sent"},
    {NeedKind::Test, MoveKind::Test, "bonding under 0.1 ohm", "not measured"},
    {NeedKind::Person, MoveKind::Ask, "on a Saturday", "to be asked"},
    {NeedKind::Permit, MoveKind::Ask, "live work", "gloves due for a test"},
};

void addNeeds(Task &task, std::mt19937 &random, std::size_t most, unsigned metInTen)
{
    const std::size_t count = random() % (most + 1);
    for (std::size_t at = 0; at < count; ++at) {
        const NeedRow &row = kNeeds[random() % std::size(kNeeds)];
        LeafNeed need;
        need.key = task.key + QStringLiteral(".n%1").arg(at);
        need.kind = row.kind;
        need.met = task.done || random() % 10 < metInTen;
        need.move = row.move;
        need.subject = QStringLiteral("s.%1").arg(QLatin1String(row.subject));
        need.subjectName = QLatin1String(row.subject);
        need.reason = QLatin1String(row.reason);
        task.needs.push_back(need);
    }
}

} // namespace

Network vanNetwork()
{
    Network network;
    std::vector<Row> rows(std::begin(kVan), std::end(kVan));
    std::sort(rows.begin(), rows.end(),
              [](const Row &left, const Row &right) { return QString(left.key) < right.key; });
    std::map<QString, std::size_t> index;
    for (std::size_t at = 0; at < rows.size(); ++at)
        index[rows[at].key] = at;
    std::mt19937 random(11);
    for (const Row &row : rows) {
        Task task;
        task.key = QLatin1String(row.key);
        task.title = QString::fromUtf8(row.title);
        task.area = areaNames().at(task.key.left(2));
        const QString flags = QLatin1String(row.flags);
        task.done = flags.contains('d');
        task.started = flags.contains('s');
        task.highVoltage = flags.contains('h');
        task.milestone = flags.contains('m');
        task.elapsedDays = task.milestone ? 0 : static_cast<int>(1 + random() % 9);
        const QStringList after = QString(QLatin1String(row.after)).split(' ', Qt::SkipEmptyParts);
        for (const QString &key : after)
            task.after.push_back(index.at(key));
        if (!task.milestone)
            addNeeds(task, random, 3, task.started ? 10 : 7);
        network.tasks.push_back(std::move(task));
    }
    return network;
}

Network randomNetwork(std::uint32_t seed, std::size_t tasks, std::size_t areas,
                      std::size_t milestones, std::size_t links, std::size_t reach)
{
    std::mt19937 random(seed);
    Network network;
    const QString words[] = {"fit",   "measure",       "the bracket", "test",
                             "cable", "and its cover", "draw",        "left side",
                             "clean", "Gehäuse",       "seal"};
    for (std::size_t at = 0; at < tasks; ++at) {
        Task task;
        task.key = QStringLiteral("t%1").arg(at, 5, 10, QLatin1Char('0'));
        for (std::size_t word = 0; word < 1 + random() % 5; ++word)
            task.title += (word == 0 ? QString() : QStringLiteral(" ")) + words[random() % 11];
        task.area = QStringLiteral("area %1").arg(random() % std::max<std::size_t>(1, areas));
        task.highVoltage = random() % 5 == 0;
        task.milestone = milestones > 0 && at % (tasks / milestones + 1) == tasks / milestones;
        task.elapsedDays = static_cast<int>(random() % 10);
        const std::size_t count = random() % (links + 1) + (task.milestone ? 4 : 0);
        for (std::size_t link = 0; at > 0 && link < count; ++link) {
            const std::size_t back = 1 + random() % std::min(at, reach);
            if (std::find(task.after.begin(), task.after.end(), at - back) == task.after.end())
                task.after.push_back(at - back);
        }
        task.done = at < tasks / 3 &&
                    std::all_of(task.after.begin(), task.after.end(),
                                [&](std::size_t before) { return network.tasks[before].done; });
        addNeeds(task, random, 5, 6);
        network.tasks.push_back(std::move(task));
    }
    return network;
}

LoomFacts inventedFacts(const Network &network)
{
    LoomFacts facts;
    std::size_t last = network.tasks.size();
    for (std::size_t task = 0; task < network.tasks.size(); ++task) {
        if (network.tasks[task].milestone)
            last = task;
    }
    facts.dates.resize(network.tasks.size());
    facts.drives.assign(network.tasks.size(), 0);
    if (last == network.tasks.size())
        return facts;
    facts.driving = holdUps(network, last).driving;
    std::mt19937 random(3);
    for (double &share : facts.drives)
        share = random() % 4 == 0 ? static_cast<double>(random() % 40) / 100 : 0;
    for (const std::size_t task : facts.driving)
        facts.drives[task] = 0.6 + static_cast<double>(random() % 40) / 100;
    for (std::size_t task = 0; task < network.tasks.size(); ++task) {
        if (network.tasks[task].milestone && !network.tasks[task].done)
            facts.dates[task] = QStringLiteral("50 %: 14 May\n80 %: 9 Jun");
    }
    return facts;
}

LoomFacts inventedForecast(const Network &network)
{
    LoomFacts facts = inventedFacts(network);
    LoomForecast forecast;
    forecast.today = QDate(2026, 11, 27);
    forecast.tasks.resize(network.tasks.size());
    std::mt19937 random(5);
    for (const std::size_t task : topologicalOrder(network)) {
        if (network.tasks[task].done)
            continue;
        LoomDays &days = forecast.tasks[task];
        int start = 0;
        int late = 0;
        for (const std::size_t before : network.tasks[task].after) {
            start = std::max(start, forecast.tasks[before].finish.value_or(0));
            late = std::max(late, forecast.tasks[before].ready[1].value_or(0));
        }
        const int own = network.tasks[task].milestone ? 0 : static_cast<int>(random() % 9);
        const int wait = network.tasks[task].milestone ? 0 : static_cast<int>(random() % 6);
        days.start = start + wait;
        const int finish = start + wait + own;
        days.finish = finish;
        days.driving = facts.drives[task];
        days.floatDays = days.driving > 0.5 ? 0 : static_cast<int>(random() % 70);
        const int likely = std::max(late + own, finish + 1);
        days.ready = {finish, likely, likely + 1 + static_cast<int>(random() % 20)};
        for (const LeafNeed &need : network.tasks[task].needs) {
            if (!need.met && !need.subject.isEmpty())
                forecast.arrivals.push_back({need.subject, std::max(1, start - 3), {}, false});
        }
    }
    facts.forecast = std::move(forecast);
    facts.drives.clear();
    facts.dates.clear();
    return facts;
}

} // namespace ohmwright::plan
