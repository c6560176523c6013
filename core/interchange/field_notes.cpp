// SPDX-License-Identifier: GPL-3.0-or-later
// Over 400 lines because it is a table: one line for each field there is.
#include "core/interchange/field_notes.h"

#include <array>
#include <span>

namespace ohmwright {

namespace {

constexpr FieldBounds of(Measure measure)
{
    return {.measure = measure};
}

constexpr FieldBounds from0(Measure measure)
{
    return {.measure = measure, .notNegative = true};
}

constexpr FieldBounds kFrom0{.notNegative = true};

constexpr FieldBounds between(int least, int most)
{
    return {.least = least, .most = most};
}

constexpr std::array kBuild{
    FieldNote{"title", "What the build is called."},
    FieldNote{"currency", "The book's own currency; every sum is told in it."},
    FieldNote{"hours_per_week", "Hours of work there are in a usual week.", between(1, 168)},
    FieldNote{"contingency_percent", "Kept back for surprises, in percent of the allowances.",
              between(0, 100)},
    FieldNote{"place", "Country or state: whose rules and whose inspector."},
    FieldNote{"confidence_percent", "Confidence at which dates are told, in percent.",
              between(50, 99)},
    FieldNote{"saved", "Money lying ready for the build, in the book's own currency.", kFrom0},
    FieldNote{"saved_on", "Day on which that much lay ready."},
    FieldNote{"set_aside", "Money set aside every month, in the book's own currency.", kFrom0},
    FieldNote{"note", "Anything else."},
};

constexpr std::array kVehicle{
    FieldNote{"make", "Maker's name."},
    FieldNote{"model", "Model."},
    FieldNote{"body", "Kind of body: van, estate, pick-up."},
    FieldNote{"vin", "Vehicle identification number as stamped."},
    FieldNote{"registration", "Registration mark."},
    FieldNote{"year", "Model year.", between(1880, 2199)},
    FieldNote{"first_registered", "Day of first registration."},
    FieldNote{"engine", "The engine it came with."},
    FieldNote{"fuel", "The fuel it ran on."},
    FieldNote{"gearbox", "The gearbox it came with."},
    FieldNote{"tyre_size", "Tyre size as on the plate."},
    FieldNote{"brakes", "Brakes as they came, with what boosts them."},
    FieldNote{"odometer", "Distance on the clock as it came.", from0(Measure::Length)},
    FieldNote{"wheelbase", "Distance between the axles.", from0(Measure::Length)},
    FieldNote{"kerb_mass", "Kerb mass from the papers.", from0(Measure::Mass)},
    FieldNote{"gross_mass_plate", "Greatest mass of the laden vehicle, from the plate.",
              from0(Measure::Mass)},
    FieldNote{"front_axle_plate", "Greatest front axle load, from the plate.",
              from0(Measure::Mass)},
    FieldNote{"rear_axle_plate", "Greatest rear axle load, from the plate.", from0(Measure::Mass)},
    FieldNote{"weighed_on", "Day on which the corners were weighed."},
    FieldNote{"weighed_with", "How it stood: fuel level, load, who sat in it, which scales."},
    FieldNote{"front_left", "Load on the front left wheel.", from0(Measure::Mass)},
    FieldNote{"front_right", "Load on the front right wheel.", from0(Measure::Mass)},
    FieldNote{"rear_left", "Load on the rear left wheel.", from0(Measure::Mass)},
    FieldNote{"rear_right", "Load on the rear right wheel.", from0(Measure::Mass)},
    FieldNote{"structure", "Rust, repairs and mounting points, as found."},
    FieldNote{"note", "Anything else."},
};

constexpr std::array kSeller{
    FieldNote{"key", "Names the seller within this file."},
    FieldNote{"name", "Name of the person or firm."},
    FieldNote{"kind", "What kind of seller."},
    FieldNote{"place", "Town, address."},
    FieldNote{"contact", "How to reach them."},
    FieldNote{"note", "Anything else."},
};

constexpr std::array kDonor{
    FieldNote{"key", "Names the donor within this file."},
    FieldNote{"make", "Maker's name."},
    FieldNote{"model", "Model."},
    FieldNote{"year", "Model year.", between(1880, 2199)},
    FieldNote{"vin", "Vehicle identification number."},
    FieldNote{"distance", "Distance it had run.", from0(Measure::Length)},
    FieldNote{"damage", "What happened to it."},
    FieldNote{"proof_of_ownership", "What shows that its parts may be sold."},
    FieldNote{"seller", "Key of the seller who broke it."},
    FieldNote{"note", "Anything else."},
};

constexpr std::array kPartType{
    FieldNote{"key", "Names the type within this file."},
    FieldNote{"make", "Maker's name."},
    FieldNote{"part_number", "Maker's part number with its suffix."},
    FieldNote{"name", "What it is."},
    FieldNote{"kind", "What kind of part."},
    FieldNote{"note", "Anything else."},
};

constexpr std::array kCircuit{
    FieldNote{"key", "Names the circuit within this file."},
    FieldNote{"name", "What it is called on the diagram."},
    FieldNote{"kind", "Which of the vehicle's circuits."},
    FieldNote{"current", "Direct or alternating current."},
    FieldNote{"nominal_voltage", "Voltage it is named by.", from0(Measure::Voltage)},
    FieldNote{"worst_voltage", "The greatest voltage that can be on it.", from0(Measure::Voltage)},
    FieldNote{"worst_voltage_from",
              "What makes that voltage: pack at full charge, charger, towing."},
    FieldNote{"note", "Anything else."},
};

constexpr std::array kBranch{
    FieldNote{"key", "Names the branch within this file."},
    FieldNote{"name", "What it is called on the diagram."},
    FieldNote{"circuit", "Key of the circuit it belongs to."},
    FieldNote{"from_end", "Where the conductor starts."},
    FieldNote{"to_end", "Where it ends."},
    FieldNote{"continuous_current", "Current it carries for hours.", from0(Measure::Current)},
    FieldNote{"peak_current", "Current it carries for moments.", from0(Measure::Current)},
    FieldNote{"fuse",
              "Key of the part that is its fuse, or of the fuse further up that protects it."},
    FieldNote{"fuse_rating", "Rated current of the fuse.", from0(Measure::Current)},
    FieldNote{"conductor_size", "Cross-section of the conductor.", from0(Measure::Area)},
    FieldNote{"conductor_length", "Length of the conductor, one way.", from0(Measure::Length)},
    FieldNote{"conductor", "Material, class and insulation: copper, class 5, 125 °C."},
    FieldNote{"colour", "Colour of the insulation."},
    FieldNote{"note", "Anything else."},
};

constexpr std::array kPart{
    FieldNote{"key", "Names the part within this file and on its label."},
    FieldNote{"name", "What it is."},
    FieldNote{"kind", "What kind of part; units and modules are tested before they are fitted."},
    FieldNote{"role", "What it does in the vehicle, as far as checks and the diagram must know."},
    FieldNote{"state", "How far it has got: the state its last move led to."},
    FieldNote{"type", "Key of its type."},
    FieldNote{"part_of", "Key of the part it sits in."},
    FieldNote{"donor", "Key of the donor it came from."},
    FieldNote{"bought", "Key of the purchase item it was bought as."},
    FieldNote{"serial", "Serial number."},
    FieldNote{"condition", "Condition on arrival."},
    FieldNote{"transport_damage", "Damage on the way."},
    FieldNote{"claim_by", "Last day to claim from the carrier."},
    FieldNote{"accepted_because", "Accepted as it is, because …"},
    FieldNote{"proof_of_ownership", "What shows that it is ours."},
    FieldNote{"place", "Where it lies: shelf, box."},
    FieldNote{"warranty_until", "Last day of its warranty."},
    FieldNote{"return_until", "Last day on which it can go back."},
    FieldNote{"warranty_terms", "What the warranty asks and excludes."},
    FieldNote{"opened_on", "Day it was opened, which may have ended its warranty."},
    FieldNote{"opened_because", "Why it was opened; must be told if it was."},
    FieldNote{"reworked_on", "Day it was last reworked; older evidence is stale."},
    FieldNote{"replaced_by", "Key of the part that takes its place."},
    FieldNote{"estimate",
              "What it is expected to cost while not bought; of a consumable, all that is missing.",
              kFrom0},
    FieldNote{"lead_days", "Days from order to arrival, the likely.", between(0, 3650)},
    FieldNote{"least_lead_days", "The same if all goes well.", between(0, 3650)},
    FieldNote{"most_lead_days", "The same if it does not.", between(0, 3650)},
    FieldNote{"option", "Key of the option of a choice it belongs to."},
    FieldNote{"line", "Key of the budget line it counts to."},
    FieldNote{"stock", "How much there is, of consumables and hardware.", kFrom0},
    FieldNote{"least_stock", "When to buy more; counted as the stock is.", kFrom0},
    FieldNote{"counted_to", "Whether the build or the workshop pays for it."},
    FieldNote{"note", "Anything else."},
};

constexpr std::array kPartMove{
    FieldNote{"from_state", "State it left; the first move of a part has none."},
    FieldNote{"to_state", "State it came to."},
    FieldNote{"moved_on", "Day of the move."},
    FieldNote{"note", "Anything else."},
};

constexpr std::array kConnection{
    FieldNote{"circuit", "Key of the circuit the part is connected to."},
    FieldNote{"branch", "Key of the branch it sits in."},
};

constexpr std::array kRating{
    FieldNote{"quantity", "Which quantity."},
    FieldNote{"kind", "limit: what it withstands; actual: what it is."},
    FieldNote{"basis", "Of a limit: continuous, peak, or least (a window's lower end); an actual "
                       "value is nominal."},
    FieldNote{"current", "Direct or alternating; their limits never mix."},
    FieldNote{"duration", "How long a peak may last.", from0(Measure::Duration)},
    FieldNote{"value", "The figure; left out when it was looked for and is not known."},
    FieldNote{"evidence", "Where the figure comes from."},
    FieldNote{"source", "Document and page, instrument, who said so."},
    FieldNote{"dated", "Day it was read or measured."},
    FieldNote{"settled", "Whether this one stands, of several that clash."},
    FieldNote{"note", "Why it is settled, or why it is unknown."},
};

constexpr std::array kLostFunction{
    FieldNote{"key", "Names the function within this file."},
    FieldNote{"name", "What goes with the engine: brake vacuum, demist, speedometer drive."},
    FieldNote{"replaced_by", "What does it instead."},
    FieldNote{"part", "Key of the part that does it instead."},
    FieldNote{"settled", "Whether the replacement is settled."},
    FieldNote{"note", "Anything else."},
};

constexpr std::array kBudgetLine{
    FieldNote{"key", "Names the budget line within this file."},
    FieldNote{"name", "What the money is for."},
    FieldNote{"allowance", "What may be spent on it, in the book's currency.", kFrom0},
    FieldNote{"position", "Place in the list, from the lowest number."},
    FieldNote{"note", "Anything else."},
};

constexpr std::array kDayRate{
    FieldNote{"key", "Names the rate within this file."},
    FieldNote{"currency", "The foreign currency."},
    FieldNote{"dated", "The day it held; one rate for each currency and day."},
    FieldNote{"rate", "Book currency for one unit of the foreign one."},
    FieldNote{"source", "Who published it."},
};

constexpr std::array kPurchase{
    FieldNote{"key", "Names the purchase within this file."},
    FieldNote{"seller", "Key of the seller."},
    FieldNote{"ordered_on", "Day of the order."},
    FieldNote{"currency", "Currency of the whole purchase."},
    FieldNote{"rate", "Book currency for one unit of the purchase's, that day; 1 for its own."},
    FieldNote{"rate_source", "Who published the rate."},
    FieldNote{"freight", "Freight for all items, in the purchase's currency.", kFrom0},
    FieldNote{"duty", "Customs duty for all items, in the purchase's currency.", kFrom0},
    FieldNote{"tax", "Tax for all items, in the purchase's currency.", kFrom0},
    FieldNote{"share_by", "What the shared costs are shared out by."},
    FieldNote{"reference", "Order or invoice number."},
    FieldNote{"promised_on", "Day it was promised for."},
    FieldNote{"arrived_on", "Day it arrived."},
    FieldNote{"note", "Anything else."},
};

constexpr std::array kPurchaseItem{
    FieldNote{"key", "Names the item within this file."},
    FieldNote{"name", "What was bought."},
    FieldNote{"count", "How many.", between(1, 100000)},
    FieldNote{"unit_price", "Price of one before shared costs, in the purchase's currency.",
              kFrom0},
    FieldNote{"core_charge",
              "Deposit on the old unit, for the whole item, in the purchase's "
              "currency.",
              kFrom0},
    FieldNote{"core_returned_on", "Day the deposit came back."},
    FieldNote{"line", "Key of the budget line it counts to."},
};

constexpr std::array kPayment{
    FieldNote{"paid_on", "Day of the payment."},
    FieldNote{"amount", "In the purchase's currency; negative when it came back."},
    FieldNote{"note", "Anything else."},
};

constexpr std::array kGotBack{
    FieldNote{"key", "Names the sum within this file."},
    FieldNote{"name", "What the money is for: the old engine sold, a part returned."},
    FieldNote{"amount", "The sum.", kFrom0},
    FieldNote{"rate", "Book currency for one unit of the sum's; 1 for the book's own."},
    FieldNote{"expected_on", "Day it is expected."},
    FieldNote{"received_on", "Day it came."},
    FieldNote{"part", "Key of the part it is for."},
    FieldNote{"line", "Key of the budget line it counts to."},
    FieldNote{"note", "Anything else."},
};

constexpr std::array kTask{
    FieldNote{"key", "Names the task within this file."},
    FieldNote{"title", "What is to be done, or the goal."},
    FieldNote{"milestone", "Whether it is a goal to reach rather than work."},
    FieldNote{"area", "The branch of the build order it hangs on: battery, papers."},
    FieldNote{"high_voltage", "Whether it is work on the high-voltage system."},
    FieldNote{"trade", "Kind of work."},
    FieldNote{"work_minutes", "Hands-on time it likely takes, in minutes of one person.",
              between(0, 600000)},
    FieldNote{"least_work_minutes", "The same if all goes well.", between(0, 600000)},
    FieldNote{"most_work_minutes", "The same if it does not.", between(0, 600000)},
    FieldNote{"wait_days", "Days of waiting that need no hands: curing, machining elsewhere, post.",
              between(0, 3650)},
    FieldNote{"least_wait_days", "The same if all goes well.", between(0, 3650)},
    FieldNote{"most_wait_days", "The same if it does not.", between(0, 3650)},
    FieldNote{"hands", "People it takes at once; one when not told.", between(1, 4)},
    FieldNote{"one_sitting", "Whether it cannot be left half done overnight."},
    FieldNote{"bay", "Where it is done, if tasks take turns there."},
    FieldNote{"fail_percent", "Chance that it must be done again, in percent.", between(0, 95)},
    FieldNote{"redo_from", "Key of the task from which it must then be done again."},
    FieldNote{"opens", "Key of the part whose case it opens."},
    FieldNote{"buys", "Key of the part it orders, which is then not ordered before."},
    FieldNote{"asks", "Key of the letter it asks for, which is then not answered before."},
    FieldNote{"option", "Key of the option of a choice it belongs to."},
    FieldNote{"state", "How far it has got."},
    FieldNote{"started_on", "Day it was started."},
    FieldNote{"done_on", "Day it was done; told exactly when the state is done."},
    FieldNote{"fixed_on", "A milestone's appointment."},
    FieldNote{"target_on", "A milestone's wished-for day."},
    FieldNote{"note", "Anything else."},
};

constexpr std::array kWorkingTime{
    FieldNote{"key", "Names the time within this file."},
    FieldNote{"weekday", "Day of the week."},
    FieldNote{"starts", "When it begins, like 19:30."},
    FieldNote{"minutes", "How long, in minutes.", between(1, 1440)},
    FieldNote{"hands", "Pairs of hands that are there.", between(1, 4)},
    FieldNote{"note", "Anything else."},
};

constexpr std::array kSpecialDay{
    FieldNote{"key", "Names the days within this file."},
    FieldNote{"first_day", "The first of them."},
    FieldNote{"last_day", "The last of them; one day when not told."},
    FieldNote{"minutes", "Work on each of them, in minutes; 0: none.", between(0, 1440)},
    FieldNote{"hands", "Pairs of hands that are there.", between(1, 4)},
    FieldNote{"note", "Anything else."},
};

constexpr std::array kWorkEntry{
    FieldNote{"key", "Names the entry within this file."},
    FieldNote{"task", "Key of the task that was worked on."},
    FieldNote{"worked_on", "Day of the work."},
    FieldNote{"started", "When it began, like 19:40."},
    FieldNote{"minutes", "How long it took, in minutes; not told while under way.",
              between(0, 2880)},
    FieldNote{"hands", "Pairs of hands that were there.", between(1, 4)},
    FieldNote{"note", "What was done."},
};

constexpr std::array kChoice{
    FieldNote{"key", "Names the choice within this file."},
    FieldNote{"question", "What is to be decided."},
    FieldNote{"decide_by", "Day by which one wishes to have decided."},
    FieldNote{"taken", "Key of the option that was taken."},
    FieldNote{"decided_on", "Day it was decided."},
    FieldNote{"because", "Why."},
    FieldNote{"note", "Anything else."},
};

constexpr std::array kChoiceOption{
    FieldNote{"key", "Names the option within this file."},
    FieldNote{"name", "What would be done."},
    FieldNote{"note", "What speaks for and against it."},
};

constexpr std::array kTaskNeed{
    FieldNote{"kind", "What kind of need; it says which of the fields below may stand."},
    FieldNote{"after", "task: key of the task that must be done before."},
    FieldNote{"part", "part, figure, tool, consumable, service: key of the part."},
    FieldNote{"state", "part, tool: how far the part must have got."},
    FieldNote{"quantity", "figure: the quantity that must be known of the part."},
    FieldNote{"basis", "figure: which figure of it."},
    FieldNote{"amount", "consumable: how much of it.", kFrom0},
    FieldNote{"money", "money: how much of it."},
    FieldNote{"test", "test: key of the test that must have been passed."},
    FieldNote{"letter", "letter: key of the letter that must have been granted."},
    FieldNote{"interface", "interface: key of the interface that must talk."},
    FieldNote{"permit", "permit: key of the work permit that must hold that day."},
    FieldNote{"what", "person, permit, service, money: what is needed, in words."},
    FieldNote{"met_on", "person, permit, service, money: day on which it was met."},
    FieldNote{"each_time", "part, service, letter: whether an attempt uses it up, so that it is "
                           "needed anew when the work is done again after a failed test."},
};

constexpr std::array kLetter{
    FieldNote{"key", "Names the letter within this file."},
    FieldNote{"subject", "What is asked."},
    FieldNote{"to_whom", "Who is asked."},
    FieldNote{"kind", "What kind of body is asked."},
    FieldNote{"state", "How far the question has got."},
    FieldNote{"asked_on", "Day it was asked; told unless it is still to ask."},
    FieldNote{"ask_again_on", "Day to ask again if no answer has come."},
    FieldNote{"answered_on", "Day of the answer."},
    FieldNote{"valid_until", "Last day on which the answer holds."},
    FieldNote{"answer_days", "Days an answer usually takes.", between(0, 3650)},
    FieldNote{"least_answer_days", "The same if all goes well.", between(0, 3650)},
    FieldNote{"most_answer_days", "The same if it does not.", between(0, 3650)},
    FieldNote{"reference", "Their file number."},
    FieldNote{"note", "Anything else."},
};

constexpr std::array kTestRecord{
    FieldNote{"key", "Names the test within this file."},
    FieldNote{"name", "What is tested."},
    FieldNote{"kind", "What kind of test."},
    FieldNote{"part", "Key of the part that is tested."},
    FieldNote{"circuit", "Key of the circuit that is tested."},
    FieldNote{"method", "How it is tested."},
    FieldNote{"limit_text", "The limit in words, with its source."},
    FieldNote{"limit_value", "The limit as a figure."},
    FieldNote{"value", "What was found; the same kind of quantity as the limit."},
    FieldNote{"instrument", "What it was measured with."},
    FieldNote{"done_by", "Who did it."},
    FieldNote{"done_on", "Day it was done; told unless the result is open."},
    FieldNote{"result", "What came of it."},
    FieldNote{"note", "Anything else."},
};

constexpr std::array kTestStep{
    FieldNote{"name", "What to do."},        FieldNote{"expected", "What to see."},
    FieldNote{"stop_if", "When to stop."},   FieldNote{"seen", "What was seen."},
    FieldNote{"result", "What came of it."},
};

constexpr std::array kCheckFigure{
    FieldNote{"key", "Names the figure within this file."},
    FieldNote{"figure", "Which figure it is; it says which of the fields below may stand."},
    FieldNote{"circuit", "Key of the circuit it is a figure of."},
    FieldNote{"branch", "Key of the branch it is a figure of."},
    FieldNote{"part", "Key of the part it is a figure of."},
    FieldNote{"type", "Key of the type it is a figure of, for all parts of it."},
    FieldNote{"test", "Key of the test it was read in."},
    FieldNote{"value", "Its value; neither this nor a word: looked for and not known."},
    FieldNote{"word", "Which it is, where the figure is a choice."},
    FieldNote{"evidence", "Where it comes from."},
    FieldNote{"source", "Document and page, instrument, or who said so."},
    FieldNote{"dated", "Day on which it was read or measured."},
    FieldNote{"note", "Anything else."},
};

constexpr std::array kRatedCurve{
    FieldNote{"key", "Names the curve within this file."},
    FieldNote{"name", "What it is a curve of."},
    FieldNote{"kind", "What it gives, and over what: a cell's voltage over its state of charge, "
                      "torque over rotation speed, a cell's current over its temperature."},
    FieldNote{"part", "Key of the part it belongs to."},
    FieldNote{"type", "Key of the type it belongs to, for all parts of it."},
    FieldNote{"evidence", "Where it comes from."},
    FieldNote{"source", "Document and page, instrument, or who said so."},
    FieldNote{"dated", "Day on which it was read or measured."},
    FieldNote{"note", "Anything else."},
};

constexpr std::array kCurvePoint{
    FieldNote{"along", "State of charge, rotation speed or temperature."},
    FieldNote{"up", "Voltage, torque or current there."},
};

constexpr std::array kOwnThreshold{
    FieldNote{"key", "Names the threshold within this file."},
    FieldNote{"name", "Which threshold it is, as the checks call it."},
    FieldNote{"value", "What results are held to here."},
    FieldNote{"reason", "Why it is not the published one; asked for where it is looser."},
};

constexpr std::array kInterface{
    FieldNote{"key", "Names the interface within this file."},
    FieldNote{"name", "What it is called."},
    FieldNote{"part", "Key of the part that has it."},
    FieldNote{"other", "Key of the part it must talk with."},
    FieldNote{"state", "How far it has got; one that talks has the day it answered."},
    FieldNote{"connector", "The connector on the unit."},
    FieldNote{"mate", "What plugs into it."},
    FieldNote{"bus", "Kind of bus and its speed."},
    FieldNote{"messages", "Which messages it wants and sends, and where they are written down."},
    FieldNote{"wake_signal", "What switches it on."},
    FieldNote{"position_sensor", "The motor's position sensor, its poles and offset."},
    FieldNote{"firmware", "Version of its firmware as read out."},
    FieldNote{"parameter_file", "Name of the file its settings are in."},
    FieldNote{"parameter_sha256",
              "SHA-256 of that file in lower-case hexadecimal digits; empty if not taken."},
    FieldNote{"pairing", "With what of the donor it was paired, and how that was undone."},
    FieldNote{"talked_on", "Day on which it answered."},
    FieldNote{"note", "Anything else."},
};

constexpr std::array kInterfacePin{
    FieldNote{"pin", "The pin as marked."},
    FieldNote{"signal", "What is on it."},
    FieldNote{"note", "Anything else."},
};

constexpr std::array kWire{
    FieldNote{"key", "Names the wire within this file."},
    FieldNote{"name", "The wire as on its sleeve."},
    FieldNote{"signal", "What it carries."},
    FieldNote{"from_part", "Key of the part it starts at."},
    FieldNote{"from_pin", "Pin or terminal there; or the place, where that is no part."},
    FieldNote{"to_part", "Key of the part it ends at."},
    FieldNote{"to_pin", "Pin or terminal there; or the place, where that is no part."},
    FieldNote{"cross_section", "Its cross-section.", from0(Measure::Area)},
    FieldNote{"length", "Its length.", from0(Measure::Length)},
    FieldNote{"colour", "Its colour."},
    FieldNote{"branch", "Key of the branch that feeds it."},
    FieldNote{"fitted", "Whether it is fitted."},
    FieldNote{"note", "Anything else."},
};

constexpr std::array kSafetySystem{
    FieldNote{"key", "Names the safety system within this file."},
    FieldNote{"name", "What it is called."},
    FieldNote{"kind", "What kind of safety system it is."},
    FieldNote{"state", "How far it has got; one that is proven names its test."},
    FieldNote{"part", "Key of the part that does it."},
    FieldNote{"test", "Key of the test that proves it."},
    FieldNote{"place", "Where it sits and how it is reached."},
    FieldNote{"note", "Anything else."},
};

constexpr std::array kWorkPermit{
    FieldNote{"key", "Names the permit within this file."},
    FieldNote{"name", "The work."},
    FieldNote{"gloves_tested_on", "Day on which the insulating gloves were tested."},
    FieldNote{"gloves_valid_until", "Day until which that test holds."},
    FieldNote{"wait_minutes", "Minutes to wait after switching off.", between(0, 100000)},
    FieldNote{"locked_off", "Whether the disconnect is out and kept by the person who works."},
    FieldNote{"absence_proven_on", "Day on which absence of voltage was proved."},
    FieldNote{"absence_reading", "Greatest voltage found then.", of(Measure::Voltage)},
    FieldNote{"instrument", "The voltage detector, proved on a known source before and after."},
    FieldNote{"worked_by", "Who works."},
    FieldNote{"second_person", "Who stands by and knows how to help."},
    FieldNote{"closed_on", "Day on which the work was over."},
    FieldNote{"note", "Anything else."},
};

constexpr std::array kMassEntry{
    FieldNote{"key", "Names the entry within this file."},
    FieldNote{"name", "What went out or came in."},
    FieldNote{"direction",
              "Whether it went out of the vehicle, came in, or is people and luggage."},
    FieldNote{"mass", "Its mass.", from0(Measure::Mass)},
    FieldNote{"behind_front_axle",
              "How far its centre of gravity is behind the front axle; negative ahead of it.",
              of(Measure::Length)},
    FieldNote{"height", "How high its centre of gravity is above the ground.",
              from0(Measure::Length)},
    FieldNote{"part", "Key of the part it is."},
    FieldNote{"evidence", "Where the mass comes from."},
    FieldNote{"note", "Anything else."},
};

constexpr std::array kAttachment{
    FieldNote{"key", "Names the attachment within this file."},
    FieldNote{"title", "What it shows."},
    FieldNote{"kind", "What kind of attachment; a link has an address instead of bytes."},
    FieldNote{"file_name", "Name it came with."},
    FieldNote{"media_type", "Its media type: image/jpeg, application/pdf."},
    FieldNote{"sha256", "SHA-256 of its bytes in hexadecimal: the name of its file in the folder "
                        "beside this document; none for a link."},
    FieldNote{"url", "Address of a link, or where the bytes were got."},
    FieldNote{"read_on", "Day it was read."},
    FieldNote{"taken_on", "Day the photo was taken."},
    FieldNote{"on_sheet", "Whether it goes on the build sheet."},
    FieldNote{"of_vehicle", "Whether it belongs to the vehicle as it came; then to nothing else."},
    FieldNote{"part", "Key of the part it belongs to."},
    FieldNote{"type", "Key of the type it belongs to."},
    FieldNote{"donor", "Key of the donor it belongs to."},
    FieldNote{"purchase", "Key of the purchase it belongs to."},
    FieldNote{"task", "Key of the task it belongs to."},
    FieldNote{"test", "Key of the test it belongs to."},
    FieldNote{"letter", "Key of the letter it belongs to."},
    FieldNote{"note", "Anything else."},
};

struct Chapter
{
    std::string_view table;
    RecordNote note;
    std::span<const FieldNote> fields;
};

// clang-format off
constexpr std::array kChapters{
    Chapter{"build", {"Build", "What is being built, and how."}, kBuild},
    Chapter{"vehicle", {"Vehicle", "The base vehicle as it came, before anything was taken off."}, kVehicle},
    Chapter{"seller", {"Seller", "Someone who sold something."}, kSeller},
    Chapter{"donor", {"Donor", "A vehicle that parts came from."}, kDonor},
    Chapter{"part_type", {"Type", "A make and part number, with ratings known before one is owned."}, kPartType},
    Chapter{"circuit", {"Circuit", "What shares a voltage."}, kCircuit},
    Chapter{"branch", {"Branch", "What shares a current and the fuse within it, with its conductor."}, kBranch},
    Chapter{"part", {"Part", "Anything bought or salvaged, with its life, connections and ratings."}, kPart},
    Chapter{"part_move", {"Move", "One dated step of a part's life."}, kPartMove},
    Chapter{"connection", {"Connection", "A circuit that a part is connected to."}, kConnection},
    Chapter{"rating", {"Rating", "One quantity of a part or type, with its evidence."}, kRating},
    Chapter{"lost_function", {"Lost function", "What goes with the engine, and what replaces it."}, kLostFunction},
    Chapter{"budget_line", {"Budget line", "An allowance."}, kBudgetLine},
    Chapter{"day_rate", {"Day rate", "A foreign currency's rate on one day."}, kDayRate},
    Chapter{"purchase", {"Purchase", "One order: several items and the costs they share."}, kPurchase},
    Chapter{"purchase_item", {"Item", "One position of a purchase."}, kPurchaseItem},
    Chapter{"payment", {"Payment", "Money paid for a purchase."}, kPayment},
    Chapter{"got_back", {"Money got back", "Money that comes back into the build."}, kGotBack},
    Chapter{"working_time", {"Working time", "A time of the week when somebody works on the build."}, kWorkingTime},
    Chapter{"special_day", {"Special day", "Days that are not like the week: off, or more hands."}, kSpecialDay},
    Chapter{"work_entry", {"Work entry", "A row of the work log."}, kWorkEntry},
    Chapter{"choice", {"Choice", "A choice still open, or how it was decided."}, kChoice},
    Chapter{"choice_option", {"Option", "One way to decide a choice."}, kChoiceOption},
    Chapter{"task", {"Task", "A piece of work, or a milestone to reach."}, kTask},
    Chapter{"task_need", {"Need", "What must be true before the task can start."}, kTaskNeed},
    Chapter{"letter", {"Letter", "A question to an authority, insurer or engineer, and its answer."}, kLetter},
    Chapter{"test_record", {"Test", "A test with its limit, its result and its instrument."}, kTestRecord},
    Chapter{"test_step", {"Step", "A step of a guided test: what to do, what to see, when to stop."}, kTestStep},
    Chapter{"mass_entry", {"Mass", "A mass taken out of the vehicle or put in."}, kMassEntry},
    Chapter{"check_figure", {"Figure", "A figure that a check asks for and that is no rating."}, kCheckFigure},
    Chapter{"rated_curve", {"Curve", "A curve of a part or type: voltage, torque, or a limit by temperature."}, kRatedCurve},
    Chapter{"curve_point", {"Point", "A point of a curve; between two it runs straight."}, kCurvePoint},
    Chapter{"own_threshold", {"Own threshold", "What a result is held to here instead of the published value."}, kOwnThreshold},
    Chapter{"interface", {"Interface", "How a unit is plugged in, woken and spoken to."}, kInterface},
    Chapter{"interface_pin", {"Pin", "A pin of an interface's connector."}, kInterfacePin},
    Chapter{"wire", {"Wire", "A row of the wire list."}, kWire},
    Chapter{"safety_system", {"Safety system", "A row of the safety-system register."}, kSafetySystem},
    Chapter{"work_permit", {"Work permit", "What must be so before work on high voltage."}, kWorkPermit},
    Chapter{"attachment", {"Attachment", "A photo or paper, or a link with the day it was read."}, kAttachment},
};
// clang-format on

const Chapter *chapterOf(std::string_view table)
{
    for (const Chapter &chapter : kChapters)
        if (chapter.table == table)
            return &chapter;
    return nullptr;
}

} // namespace

std::optional<RecordNote> recordNote(std::string_view table)
{
    const Chapter *chapter = chapterOf(table);
    return chapter ? std::optional(chapter->note) : std::nullopt;
}

std::optional<FieldNote> fieldNote(std::string_view table, std::string_view field)
{
    if (const Chapter *chapter = chapterOf(table))
        for (const FieldNote &note : chapter->fields)
            if (note.field == field)
                return note;
    return std::nullopt;
}

} // namespace ohmwright
