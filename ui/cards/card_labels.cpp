// SPDX-License-Identifier: GPL-3.0-or-later
// Over 400 lines because it is a table: one line for each field of each card.
#include "ui/cards/card_labels.h"

#include <QCoreApplication>

#include <array>

namespace ohmwright::ui {

namespace {

constexpr auto kFull = FieldPlace::Full;

constexpr auto kNote = FieldPlace::Note;
constexpr auto kFixed = FieldPlace::Fixed;
constexpr auto kHidden = FieldPlace::Hidden;

#define L(text) QT_TRANSLATE_NOOP("CardLabels", text)

// clang-format off
constexpr FieldLabel kKey{"key", L("Key"), "", kHidden};
constexpr FieldLabel kAnything{"note", L("Note"), "", kNote};

constexpr std::array kBuild{
    FieldLabel{"title", L("Title"), "", kFull},
    FieldLabel{"place", L("Place"), L("country or state: whose rules, whose inspector")},
    FieldLabel{"currency", L("Currency"), L("set when the book was made"), kFixed},
    FieldLabel{"hours_per_week", L("Hours a week"), L("of work in a usual week, 1 to 168; used while no working times are told")},
    FieldLabel{"confidence_percent", L("Confidence"), L("percent at which dates are told, 50 to 99; 80 if left empty")},
    FieldLabel{"contingency_percent", L("Contingency"), L("percent of the allowances, 0 to 100")},
    FieldLabel{"saved", L("Money ready"), L("what lies there for the build")},
    FieldLabel{"saved_on", L("Ready on"), L("the day that much lay there")},
    FieldLabel{"set_aside", L("Set aside a month"), L("what can be added every month")},
    kAnything,
};

constexpr std::array kVehicle{
    FieldLabel{.field = "make", .label = L("Make"), .group = L("The vehicle")},
    FieldLabel{"model", L("Model")},
    FieldLabel{"body", L("Body"), L("van, estate, pick-up")},
    FieldLabel{"year", L("Model year")},
    FieldLabel{"vin", L("Identification number"), L("as stamped")},
    FieldLabel{"registration", L("Registration mark")},
    FieldLabel{"first_registered", L("First registered")},
    FieldLabel{"odometer", L("Distance on the clock"), L("e.g. 182 000 km")},
    FieldLabel{.field = "engine", .label = L("Engine"), .group = L("What drove it")},
    FieldLabel{"fuel", L("Fuel")},
    FieldLabel{"gearbox", L("Gearbox")},
    FieldLabel{"brakes", L("Brakes"), L("with what boosts them")},
    FieldLabel{"tyre_size", L("Tyre size"), L("as on the plate")},
    FieldLabel{"wheelbase", L("Wheelbase"), L("e.g. 2700 mm")},
    FieldLabel{.field = "kerb_mass", .label = L("Kerb mass"), .hint = L("from the papers, e.g. 1180 kg"), .group = L("Masses from papers and plate")},
    FieldLabel{"gross_mass_plate", L("Greatest laden mass"), L("from the plate")},
    FieldLabel{"front_axle_plate", L("Greatest front axle load"), L("from the plate")},
    FieldLabel{"rear_axle_plate", L("Greatest rear axle load"), L("from the plate")},
    FieldLabel{.field = "front_left", .label = L("Front left"), .hint = L("e.g. 312 kg"), .group = L("Weighed before anything came off")},
    FieldLabel{"front_right", L("Front right"), L("e.g. 308 kg")},
    FieldLabel{"rear_left", L("Rear left"), L("e.g. 268 kg")},
    FieldLabel{"rear_right", L("Rear right"), L("e.g. 271 kg")},
    FieldLabel{"weighed_on", L("Weighed on")},
    FieldLabel{"weighed_with", L("Weighed with"), L("fuel level, load, who sat in it, which scales")},
    FieldLabel{.field = "structure", .label = L("Structure as found"), .hint = L("rust, repairs, mounting points"), .place = kNote, .group = L("As it stood")},
    kAnything,
};

constexpr std::array kSeller{
    kKey,
    FieldLabel{"name", L("Name"), "", kFull},
    FieldLabel{.field = "kind", .label = L("Kind"), .listed = true},
    FieldLabel{.field = "place", .label = L("Place"), .listed = true},
    FieldLabel{"contact", L("Contact"), L("telephone, mail, who to ask for"), kFull},
    kAnything,
};

constexpr std::array kDonor{
    kKey,
    FieldLabel{"make", L("Make")},
    FieldLabel{"model", L("Model")},
    FieldLabel{"year", L("Model year")},
    FieldLabel{.field = "distance", .label = L("Distance it had run"), .hint = L("e.g. 48 000 km"), .listed = true},
    FieldLabel{"vin", L("Identification number"), L("as stamped")},
    FieldLabel{.field = "seller", .label = L("Seller"), .hint = L("who broke it; a new name is added"), .listed = true},
    FieldLabel{"damage", L("What happened to it"), L("rear hit, flood, fire"), kFull},
    FieldLabel{"proof_of_ownership", L("Proof of ownership"), L("what shows that its parts may be sold"), kFull},
    kAnything,
};

constexpr std::array kType{
    kKey,
    FieldLabel{"name", L("Name"), L("what it is"), kFull},
    FieldLabel{.field = "make", .label = L("Make"), .listed = true},
    FieldLabel{.field = "part_number", .label = L("Part number"), .hint = L("with its suffix"), .listed = true},
    FieldLabel{"kind", L("Kind")},
    kAnything,
};

constexpr std::array kCircuit{
    kKey,
    FieldLabel{"name", L("Name"), L("as on the diagram"), kFull},
    FieldLabel{.field = "kind", .label = L("Kind"), .listed = true},
    FieldLabel{.field = "current", .label = L("Current"), .listed = true},
    FieldLabel{"nominal_voltage", L("Nominal voltage"), L("e.g. 400 V")},
    FieldLabel{.field = "worst_voltage", .label = L("Greatest voltage"), .hint = L("that can ever be on it, e.g. 454 V"), .listed = true},
    FieldLabel{"worst_voltage_from", L("What makes that voltage"), L("pack at full charge, 108 × 4.2 V"), kFull},
    kAnything,
};

constexpr std::array kBranch{
    kKey,
    FieldLabel{"name", L("Name"), L("as on the diagram"), kFull},
    FieldLabel{"circuit", L("Circuit"), "", kFull},
    FieldLabel{"from_end", L("From"), L("where the conductor starts")},
    FieldLabel{"to_end", L("To"), L("where it ends")},
    FieldLabel{.field = "continuous_current", .label = L("Continuous current"), .hint = L("for hours, e.g. 180 A"), .group = L("Current and fuse")},
    FieldLabel{"peak_current", L("Peak current"), L("for moments, e.g. 350 A")},
    FieldLabel{.field = "fuse_rating", .label = L("Fuse rating"), .hint = L("e.g. 250 A"), .listed = true},
    FieldLabel{"fuse", L("Fuse"), L("its own, or the one further up that protects it")},
    FieldLabel{.field = "conductor_size", .label = L("Cross-section"), .hint = L("e.g. 50 mm2, 1/0 AWG"), .listed = true, .group = L("Conductor")},
    FieldLabel{.field = "conductor_length", .label = L("Length"), .hint = L("one way, e.g. 3.2 m"), .listed = true},
    FieldLabel{"conductor", L("Material and insulation"), L("copper, class 5, 125 °C"), kFull},
    FieldLabel{"colour", L("Colour")},
    kAnything,
};

constexpr std::array kLostFunction{
    kKey,
    FieldLabel{"name", L("What goes with the engine"), L("brake vacuum, demist, speedometer drive"), kFull},
    FieldLabel{.field = "replaced_by", .label = L("What does it instead"), .place = kFull, .listed = true},
    FieldLabel{"part", L("Part that does it"), L("if it is in the book"), kFull},
    FieldLabel{"settled", L("The replacement is settled"), "", kFull},
    kAnything,
};

constexpr std::array kLetter{
    kKey,
    FieldLabel{"subject", L("Subject"), L("what is asked"), kFull},
    FieldLabel{.field = "to_whom", .label = L("To whom"), .listed = true},
    FieldLabel{"kind", L("Kind")},
    FieldLabel{.field = "state", .label = L("State"), .listed = true},
    FieldLabel{"reference", L("Reference"), L("theirs, to quote")},
    FieldLabel{.field = "asked_on", .label = L("Asked on"), .group = L("Days")},
    FieldLabel{"ask_again_on", L("Ask again on")},
    FieldLabel{"answered_on", L("Answered on")},
    FieldLabel{"valid_until", L("Valid until")},
    FieldLabel{"answer_days", L("Days to an answer"), L("how long it usually takes")},
    FieldLabel{"least_answer_days", L("At least"), L("days, if all goes well")},
    FieldLabel{"most_answer_days", L("At most"), L("days, if it does not")},
    kAnything,
};

constexpr std::array kWorkingTime{
    kKey,
    FieldLabel{.field = "weekday", .label = L("Day of the week"), .listed = true},
    FieldLabel{.field = "starts", .label = L("From"), .hint = L("e.g. 19:00; may stay empty"), .listed = true},
    FieldLabel{.field = "minutes", .label = L("Minutes"), .hint = L("how long, 1 to 1440"), .listed = true},
    FieldLabel{"hands", L("Pairs of hands"), L("1 to 4")},
    kAnything,
};

constexpr std::array kSpecialDay{
    kKey,
    FieldLabel{.field = "first_day", .label = L("From"), .listed = true},
    FieldLabel{.field = "last_day", .label = L("To"), .hint = L("that one day if left empty"), .listed = true},
    FieldLabel{.field = "minutes", .label = L("Minutes a day"), .hint = L("0: nobody works"), .listed = true},
    FieldLabel{"hands", L("Pairs of hands"), L("1 to 4")},
    kAnything,
};

constexpr std::array kWorkEntry{
    kKey,
    FieldLabel{"task", L("Task"), L("what was worked on"), kFull},
    FieldLabel{.field = "worked_on", .label = L("Day"), .listed = true},
    FieldLabel{"started", L("Began at"), L("e.g. 19:40; may stay empty")},
    FieldLabel{.field = "minutes", .label = L("Minutes"), .hint = L("empty while it is under way"), .listed = true},
    FieldLabel{"hands", L("Pairs of hands"), L("1 to 4")},
    kAnything,
};

constexpr std::array kChoice{
    kKey,
    FieldLabel{"question", L("What is to be decided"), "", kFull},
    FieldLabel{"decide_by", L("Decide by"), L("a wish of your own; the forecast tells another")},
    FieldLabel{.field = "taken", .label = L("Taken"), .hint = L("empty while it is open"), .listed = true},
    FieldLabel{"decided_on", L("Decided on")},
    FieldLabel{"because", L("Because"), "", kFull},
    kAnything,
};

constexpr std::array kChoiceOption{
    kKey,
    FieldLabel{"name", L("What would be done"), "", kFull},
    kAnything,
};

constexpr std::array kTest{
    kKey,
    FieldLabel{"name", L("What is tested"), "", kFull},
    FieldLabel{.field = "kind", .label = L("Kind"), .listed = true},
    FieldLabel{"part", L("Part"), L("if it is one part that is tested")},
    FieldLabel{"circuit", L("Circuit"), L("if it is a circuit that is tested"), kFull},
    FieldLabel{"method", L("Method"), "", kFull},
    FieldLabel{.field = "limit_text", .label = L("Limit in words"), .hint = L("with its source"), .place = kFull, .group = L("Limit and what was found")},
    FieldLabel{"limit_value", L("Limit"), L("e.g. 500 ohm, 0.1 ohm, 120 Nm")},
    FieldLabel{"value", L("Found"), L("the same quantity as the limit")},
    FieldLabel{.field = "result", .label = L("Result"), .listed = true},
    FieldLabel{.field = "done_on", .label = L("Done on"), .listed = true, .listedAs = L("done %1")},
    FieldLabel{"instrument", L("Instrument"), L("make, number, calibrated until")},
    FieldLabel{"done_by", L("Done by")},
    kAnything,
};

constexpr std::array kMass{
    kKey,
    FieldLabel{"name", L("What went out or came in"), "", kFull},
    FieldLabel{.field = "direction", .label = L("Direction"), .listed = true},
    FieldLabel{.field = "mass", .label = L("Mass"), .hint = L("e.g. 46 kg"), .listed = true},
    FieldLabel{"behind_front_axle", L("Behind the front axle"), L("its centre, e.g. 850 mm; ahead: -200 mm")},
    FieldLabel{"height", L("Above the ground"), L("its centre, e.g. 600 mm")},
    FieldLabel{.field = "evidence", .label = L("Evidence"), .listed = true},
    FieldLabel{"part", L("Part"), L("if it is in the book"), kFull},
    kAnything,
};

constexpr std::array kFigure{
    kKey,
    FieldLabel{"figure", L("Figure"), L("some of its words, then choose"), kFull},
    FieldLabel{.field = "value", .label = L("Value"), .hint = L("with its unit; empty: looked for, not known"), .listed = true},
    FieldLabel{.field = "word", .label = L("Which"), .hint = L("empty: looked for, not known"), .listed = true},
    FieldLabel{.field = "evidence", .label = L("Evidence"), .listed = true},
    FieldLabel{"dated", L("Read or measured on")},
    FieldLabel{"source", L("Source"), L("document and page, instrument, who said so"), kFull},
    kAnything,
    FieldLabel{.field = "circuit", .label = L("Circuit"), .listed = true, .group = L("Of what")},
    FieldLabel{.field = "branch", .label = L("Branch"), .listed = true},
    FieldLabel{.field = "part", .label = L("Part"), .listed = true},
    FieldLabel{.field = "type", .label = L("Type"), .listed = true},
    FieldLabel{.field = "test", .label = L("Test"), .listed = true},
};

constexpr std::array kCurve{
    kKey,
    FieldLabel{"name", L("Name"), L("of what, at which conditions"), kFull},
    FieldLabel{.field = "kind", .label = L("Kind"), .listed = true},
    FieldLabel{.field = "evidence", .label = L("Evidence"), .listed = true},
    FieldLabel{"part", L("Part"), L("or a type")},
    FieldLabel{"type", L("Type"), L("for all parts of it")},
    FieldLabel{"dated", L("Read or measured on")},
    FieldLabel{"source", L("Source"), L("document and page, instrument, who said so"), kFull},
    kAnything,
};

constexpr std::array kPoint{
    FieldLabel{"along", L("At"), L("60 %, 3000 rpm, 10 °C")},
    FieldLabel{.field = "up", .label = L("Value"), .hint = L("3.7 V, 180 Nm, 40 A"), .listed = true},
};

constexpr std::array kThreshold{
    kKey,
    FieldLabel{"name", L("Threshold"), L("some of its words, then choose"), kFull},
    FieldLabel{.field = "value", .label = L("Held to"), .hint = L("with its unit"), .listed = true},
    FieldLabel{.field = "reason", .label = L("Reason"), .hint = L("asked for where it is looser than published"), .place = kFull, .listed = true},
};

constexpr std::array kInterface{
    kKey,
    FieldLabel{"name", L("Name"), L("inverter control, charger, pack monitor"), kFull},
    FieldLabel{.field = "part", .label = L("Unit"), .listed = true},
    FieldLabel{"other", L("Talks with"), L("if that is in the book")},
    FieldLabel{.field = "state", .label = L("State"), .listed = true},
    FieldLabel{"talked_on", L("Answered on")},
    FieldLabel{.field = "connector", .label = L("Connector on it"), .group = L("How it is plugged in and woken")},
    FieldLabel{"mate", L("Mating connector"), L("with seals and pins; bought where")},
    FieldLabel{"wake_signal", L("Wake signal"), L("what switches it on, on which pin"), kFull},
    FieldLabel{"position_sensor", L("Position sensor"), L("of a motor: kind, poles, offset"), kFull},
    FieldLabel{.field = "bus", .label = L("Bus"), .hint = L("kind and speed"), .group = L("What it says and hears")},
    FieldLabel{"firmware", L("Firmware"), L("version as read out")},
    FieldLabel{.field = "messages", .label = L("Messages"), .hint = L("wanted and sent, written down where"), .place = kNote},
    FieldLabel{"parameter_file", L("Parameter file"), L("its name, kept where")},
    FieldLabel{"parameter_sha256", L("Its SHA-256"), L("64 digits, to know it again")},
    FieldLabel{"pairing", L("Pairing"), L("with what of the donor; how it was undone"), kFull},
    kAnything,
};

constexpr std::array kPin{
    FieldLabel{"pin", L("Pin"), L("as marked")},
    FieldLabel{.field = "signal", .label = L("Signal"), .listed = true},
    FieldLabel{.field = "note", .label = L("Note"), .place = kFull, .listed = true},
};

constexpr std::array kWire{
    kKey,
    FieldLabel{"name", L("Wire"), L("as on its sleeve")},
    FieldLabel{.field = "signal", .label = L("Signal"), .listed = true},
    FieldLabel{.field = "from_part", .label = L("From"), .listed = true, .listedAs = L("from %1")},
    FieldLabel{"from_pin", L("Pin or place there"), L("X1:4")},
    FieldLabel{.field = "to_part", .label = L("To"), .listed = true, .listedAs = L("to %1")},
    FieldLabel{"to_pin", L("Pin or place here"), L("X2:7; chassis, left sill")},
    FieldLabel{"cross_section", L("Cross-section"), L("e.g. 0.75 mm2")},
    FieldLabel{"length", L("Length"), L("e.g. 2.4 m")},
    FieldLabel{"colour", L("Colour")},
    FieldLabel{"branch", L("Fed by branch")},
    FieldLabel{.field = "fitted", .label = L("It is fitted"), .place = kFull, .listed = true, .listedAs = L("fitted|not fitted")},
    kAnything,
};

constexpr std::array kSafety{
    kKey,
    FieldLabel{"name", L("Safety system"), "", kFull},
    FieldLabel{.field = "kind", .label = L("Kind"), .listed = true},
    FieldLabel{.field = "state", .label = L("State"), .listed = true},
    FieldLabel{"place", L("Where it sits"), L("and how it is reached"), kFull},
    FieldLabel{"part", L("Part that does it")},
    FieldLabel{"test", L("Test that proves it")},
    kAnything,
};

constexpr std::array kPermit{
    kKey,
    FieldLabel{"name", L("Work"), L("what is to be done, on what"), kFull},
    FieldLabel{.field = "worked_by", .label = L("Who works"), .listed = true, .listedAs = L("%1 works")},
    FieldLabel{"second_person", L("Second person"), L("stands by, knows how to help")},
    FieldLabel{.field = "gloves_tested_on", .label = L("Gloves tested on"), .group = L("Before a hand goes in")},
    FieldLabel{.field = "gloves_valid_until", .label = L("That test holds until"), .listed = true, .listedAs = L("gloves until %1")},
    FieldLabel{"locked_off", L("Locked off, the key kept by who works"), "", kFull},
    FieldLabel{"wait_minutes", L("Minutes to wait"), L("after switching off, by the maker")},
    FieldLabel{"instrument", L("Voltage detector"), L("proved on a known source before and after")},
    FieldLabel{.field = "absence_proven_on", .label = L("Absence of voltage proved on"), .listed = true, .listedAs = L("absence of voltage proved %1")},
    FieldLabel{"absence_reading", L("Greatest voltage found"), L("e.g. 0.4 V")},
    FieldLabel{.field = "closed_on", .label = L("Work over on"), .listed = true, .group = L("Afterwards"), .listedAs = L("work over %1")},
    kAnything,
};

constexpr std::array kStep{
    FieldLabel{"name", L("Do"), "", kFull},
    FieldLabel{"expected", L("See"), L("what should be seen"), kFull},
    FieldLabel{"stop_if", L("Stop if"), "", kFull},
    FieldLabel{.field = "seen", .label = L("Seen"), .place = kFull, .listed = true},
    FieldLabel{.field = "result", .label = L("Result"), .listed = true},
};

constexpr std::array kAttachment{
    kKey,
    FieldLabel{"title", L("Title"), L("what it shows"), kFull},
    FieldLabel{.field = "kind", .label = L("Kind"), .listed = true},
    FieldLabel{"on_sheet", L("On the build sheet")},
    FieldLabel{"url", L("Address"), L("of a link, or where it was got"), kFull},
    FieldLabel{.field = "read_on", .label = L("Read on"), .listed = true, .listedAs = L("read %1")},
    FieldLabel{.field = "taken_on", .label = L("Taken on"), .listed = true, .listedAs = L("taken %1")},
    FieldLabel{"file_name", L("File"), L("as it came"), kFixed},
    FieldLabel{"media_type", L("Media type"), "", kHidden},
    FieldLabel{"sha256", L("SHA-256"), "", kHidden},
    FieldLabel{.field = "of_vehicle", .label = L("The vehicle as it came"), .place = kFull, .group = L("Belongs to one of these, or to the build")},
    FieldLabel{.field = "part", .label = L("Part"), .listed = true},
    FieldLabel{"type", L("Type")},
    FieldLabel{"donor", L("Donor")},
    FieldLabel{"purchase", L("Purchase")},
    FieldLabel{"task", L("Task")},
    FieldLabel{"test", L("Test")},
    FieldLabel{"letter", L("Letter")},
    kAnything,
};

constexpr std::array kPurchase{
    kKey,
    FieldLabel{"seller", L("Seller"), L("a new name is added"), kFull},
    FieldLabel{"ordered_on", L("Ordered on")},
    FieldLabel{.field = "reference", .label = L("Order or invoice number"), .listed = true},
    FieldLabel{"promised_on", L("Promised for")},
    FieldLabel{.field = "arrived_on", .label = L("Arrived on"), .listed = true, .listedAs = L("arrived %1")},
    FieldLabel{.field = "currency", .label = L("Currency"), .hint = L("ISO code; its items are in it too"), .group = L("Currency")},
    FieldLabel{"rate", L("Rate"), L("of that day; empty takes the newest known")},
    FieldLabel{"rate_source", L("Rate from"), L("who published it"), kFull},
    FieldLabel{.field = "freight", .label = L("Freight"), .group = L("Costs its items share")},
    FieldLabel{"duty", L("Duty")},
    FieldLabel{"tax", L("Tax")},
    FieldLabel{"share_by", L("Shared out by")},
    kAnything,
};

constexpr std::array kItem{
    kKey,
    FieldLabel{"name", L("What was bought"), "", kFull},
    FieldLabel{.field = "count", .label = L("How many"), .listed = true},
    FieldLabel{.field = "unit_price", .label = L("Price of one"), .hint = L("before shared costs"), .listed = true},
    FieldLabel{"core_charge", L("Core charge"), L("deposit on the old unit")},
    FieldLabel{"core_returned_on", L("Core charge back on")},
    FieldLabel{.field = "line", .label = L("Budget line"), .place = kFull, .listed = true},
};

constexpr std::array kPayment{
    FieldLabel{"amount", L("Paid")},
    FieldLabel{"paid_on", L("On")},
    FieldLabel{.field = "note", .label = L("Note"), .place = kFull, .listed = true},
};

constexpr std::array kGotBack{
    kKey,
    FieldLabel{"name", L("What for"), L("the old engine sold, a part returned"), kFull},
    FieldLabel{.field = "amount", .label = L("Sum"), .listed = true},
    FieldLabel{"rate", L("Rate"), L("empty takes the newest known")},
    FieldLabel{"expected_on", L("Expected on")},
    FieldLabel{.field = "received_on", .label = L("Received on"), .listed = true, .listedAs = L("received %1")},
    FieldLabel{"part", L("Part")},
    FieldLabel{"line", L("Budget line")},
    kAnything,
};

constexpr std::array kDayRate{
    kKey,
    FieldLabel{"currency", L("Currency"), L("ISO code, e.g. SEK")},
    FieldLabel{"dated", L("Day it held")},
    FieldLabel{.field = "rate", .label = L("Rate"), .hint = L("book currency for one unit"), .listed = true},
    FieldLabel{.field = "source", .label = L("Source"), .hint = L("who published it"), .listed = true},
};

constexpr std::array kCards{
    CardLabels{"build", L("Build"), "", "book", "", kBuild},
    CardLabels{"vehicle", L("Vehicle as it came"), "", "sheet", "", kVehicle},
    CardLabels{"seller", L("Sellers"), L("New seller"), "parts", L("Who sold or may sell you something: dismantler, auction, dealer, workshop. They are remembered when a part is logged."), kSeller},
    CardLabels{"donor", L("Donors"), L("New donor"), "parts", L("The vehicles your parts came out of, with what they had run, what happened to them, and what shows that their parts may be sold."), kDonor},
    CardLabels{"part_type", L("Types"), L("New type"), "parts", L("A make and part number with ratings known before you own one. Parts of that type take their ratings from here until they have their own."), kType},
    CardLabels{"circuit", L("Circuits"), L("New circuit"), "parts", L("What shares a voltage: traction, motor phases, charge inlet, 12 V. A part on a circuit is asked for the ratings that circuit needs; its branches are the conductor and fuse schedule."), kCircuit},
    CardLabels{"branch", L("Branches"), L("New branch"), "parts", L("What shares a current and the fuse within it. Each is a row of the conductor and fuse schedule."), kBranch, "circuit"},
    CardLabels{"lost_function", L("What goes with the engine"), L("New function"), "sheet", L("What the engine did beside driving: brake vacuum, demist, power steering, speedometer. Each needs something that does it instead."), kLostFunction},
    CardLabels{"letter", L("Letters"), L("New letter"), "note", L("Questions to an authority, insurer or engineer, and their answers, kept as evidence."), kLetter},
    CardLabels{"working_time", L("Working times"), L("New working time"), "build_order", L("When somebody works on the build in a usual week. Two that overlap add their pairs of hands. The forecast plans with them."), kWorkingTime},
    CardLabels{"special_day", L("Days off and on"), L("New day"), "build_order", L("Days that are not like the week: a holiday, a free week in the garage, a helper for one Saturday. They replace the week's pattern on those days."), kSpecialDay},
    CardLabels{"work_entry", L("Work log"), L("New entry"), "note", L("What was done, on which day, how long it took. The hours go to the task, and estimates learn from them."), kWorkEntry},
    CardLabels{"choice", L("Choices"), L("New choice"), "question", L("Unit A or B, one unit or two. Tasks and parts belong to an option; those of options not taken stay for the record and count for nothing."), kChoice},
    CardLabels{"choice_option", L("Options"), L("New option"), "question", L("Each way it could be decided. While it is open, the first one is planned with."), kChoiceOption},
    CardLabels{"test_record", L("Test records"), L("New test"), "checks", L("Isolation, bonding, torque, brakes: the limit with its source, what was found, with which instrument, by whom."), kTest},
    CardLabels{"mass_entry", L("Masses"), L("New mass"), "sheet", L("What goes out of the vehicle and what comes in, with where its weight sits. Weigh what comes out before it leaves."), kMass},
    CardLabels{"test_step", L("Steps"), L("New step"), "checks", L("A guided test goes step by step: what to do, what to see, when to stop."), kStep},
    CardLabels{"check_figure", L("Figures"), L("New figure"), "checks", L("What checks ask for beyond ratings: the drag of the body, a switching time, what a meter read. Each with its evidence."), kFigure},
    CardLabels{"rated_curve", L("Curves"), L("New curve"), "checks", L("A cell's voltage over its charge, a motor's torque over its speed, what a cell takes by temperature."), kCurve},
    CardLabels{"curve_point", L("Points"), L("New point"), "checks", L("Between two points the curve runs straight."), kPoint},
    CardLabels{"own_threshold", L("Own thresholds"), L("New threshold"), "checks", L("Tighten what results are held to as you like, no reason asked. A looser one is shown beside the published one, with your reason, here and on the build sheet."), kThreshold},
    CardLabels{"interface", L("Interfaces"), L("New interface"), "parts", L("How each unit is plugged in, woken and spoken to, written down before the donor is gone. What cannot yet be made to talk holds up what needs it."), kInterface},
    CardLabels{"interface_pin", L("Pins"), L("New pin"), "parts", L("Each pin of the connector, and what is on it."), kPin},
    CardLabels{"wire", L("Wire list"), L("New wire"), "parts", L("Every low-voltage wire: from which pin to which, with its colour, so that it is found again."), kWire},
    CardLabels{"safety_system", L("Safety systems"), L("New safety system"), "checks", L("Interlock, isolation monitor, disconnect, inertia switch, touch protection, labels: where each is, and the test that proves it."), kSafety},
    CardLabels{"work_permit", L("Work permits"), L("New work permit"), "checks", L("Before work on high voltage: gloves in test date, locked off, waited, absence of voltage proved, a second person. The law of the place and its licensed people decide."), kPermit},
    CardLabels{"attachment", L("Photos and papers"), L("New link"), "photo", L("Photos and papers kept in the book, and links with the day they were read. Those marked for it go on the build sheet."), kAttachment},
    CardLabels{"purchase", L("Purchases"), L("New purchase"), "budget", L("One order: its items, and the freight, duty and tax they share."), kPurchase},
    CardLabels{"purchase_item", L("Items"), L("New item"), "budget", L("What was bought with this order."), kItem},
    CardLabels{"payment", L("Payments"), L("New payment"), "budget", L("Nothing is paid yet."), kPayment},
    CardLabels{"got_back", L("Money got back"), L("New sum"), "budget", L("Money that comes back: the old engine sold, a part returned, a part sold on."), kGotBack},
    CardLabels{"day_rate", L("Day rates"), L("New rate"), "budget", L("What a foreign currency cost on a day. The newest is offered for a new purchase."), kDayRate},
};
// clang-format on

#undef L

} // namespace

const CardLabels *cardLabels(std::string_view table)
{
    for (const CardLabels &labels : kCards)
        if (labels.table == table)
            return &labels;
    return nullptr;
}

std::vector<const CardLabels *> allCardLabels()
{
    std::vector<const CardLabels *> all;
    for (const CardLabels &labels : kCards)
        all.push_back(&labels);
    return all;
}

const FieldLabel *fieldLabel(const CardLabels &labels, const QString &field)
{
    for (const FieldLabel &label : labels.fields)
        if (field == QLatin1String(label.field.data(), static_cast<qsizetype>(label.field.size())))
            return &label;
    return nullptr;
}

QString labelText(const char *text)
{
    return QCoreApplication::translate("CardLabels", text);
}

} // namespace ohmwright::ui
