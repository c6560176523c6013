// SPDX-License-Identifier: GPL-3.0-or-later
// The paper checks are worked on: how margins are told, and which input a verdict is said to rest
// on. No standard has it; the figures are worked by hand.
#include "core/checks/margin_words.h"
#include "core/checks/origin_words.h"
#include "core/checks/worksheet.h"

#include <gtest/gtest.h>

namespace ohmwright {

namespace {

QString text(const char *plain)
{
    return QString::fromUtf8(plain);
}

Worksheet sheet()
{
    return {text("tried"), text("Tried"), Protects::Pack};
}

} // namespace

TEST(MarginWords, TellPartsInPercentAndMultiplesAsTimes)
{
    EXPECT_EQ(marginFigure(0.123), text("12 %"));
    EXPECT_EQ(marginFigure(0.045), text("4.5 %"));
    EXPECT_EQ(marginFigure(-0.04), text("-4.0 %"));
    EXPECT_EQ(marginFigure(-0.0001), text("0.0 %"));
    EXPECT_EQ(marginFigure(1), text("100 %"));
    EXPECT_EQ(marginFigure(-1), text("-100 %")); // a limit of nothing, and something there
    EXPECT_EQ(marginFigure(2.2), text("3.2 times"));
    EXPECT_EQ(marginFigure(14), text("15 times"));
    EXPECT_EQ(marginFigure(-2.5), text("3.5 times over"));
    EXPECT_EQ(marginFigure(5000), text("over 100 times"));
    EXPECT_EQ(marginWords(0.123), text("12 % to spare"));
    EXPECT_EQ(marginWords(-0.04), text("short by 4.0 %"));
    EXPECT_EQ(marginWords(2.2), text("3.2 times what is asked"));
    EXPECT_EQ(marginWords(-2.5), text("3.5 times the limit"));
}

// 32 of 10 asked for is 3.2 times, 35 of 10 allowed is 3.5 times.
TEST(Worksheet, SaysTimesInItsSentence)
{
    Worksheet more = sheet();
    more.atLeast(text("energy"), joules(32), joules(10), u"J", {});
    EXPECT_EQ(more.finish({}).sentence, text("Holds with 3.2 times what is asked."));
    Worksheet over = sheet();
    over.atMost(text("energy"), joules(35), joules(10), u"J", {});
    EXPECT_EQ(over.finish({}).sentence, text("Fails at 3.5 times the limit."));
    Worksheet little = sheet();
    little.atMost(text("energy"), joules(11), joules(10), u"J", {});
    EXPECT_EQ(little.finish({}).sentence, text("Fails by 10 %."));
}

TEST(Worksheet, NamesTheWeakestInputOfWhatDecides)
{
    const auto guess = given(amperes(5), text("guessed first"), Evidence::Assumed);
    const auto told = given(amperes(8), text("told by the seller"), Evidence::Seller);
    const auto read = given(amperes(10), text("read off the plate"), Evidence::Nameplate);
    const auto alike = given(amperes(2), text("guessed as well"), Evidence::Assumed);
    const auto work = [&](double decisive) {
        Worksheet paper = sheet();
        for (const auto &input : {guess, told, read, alike})
            paper.take(input, u"I", u"A");
        paper.restsOn(guess, read);
        paper.atMost(text("roomy"), amperes(5), amperes(10), u"A", {});
        paper.restsOn(read, told);
        paper.atMost(text("deciding"), amperes(decisive), amperes(10), u"A", {});
        return paper.finish({});
    };
    // the guess enters the roomy row only
    EXPECT_EQ(work(8).weakestInput, text("told by the seller"));
    EXPECT_EQ(work(8).sentence,
              text("Holds with 20 % to spare, resting on a seller's word for told by the seller; "
                   "elsewhere on an assumption for guessed first."));
    EXPECT_EQ(work(12).weakest, Evidence::Seller);
    EXPECT_EQ(work(2).weakestInput, text("guessed first"));

    // of equally weak ones the first named; what is not there is passed over
    Worksheet paper = sheet();
    paper.take(guess, u"I", u"A");
    paper.take(alike, u"I", u"A");
    paper.restsOn(std::optional<Given<Current>>(), alike, guess);
    paper.atMost(text("row"), amperes(5), amperes(10), u"A", {});
    const Check check = paper.finish({});
    EXPECT_EQ(check.weakestInput, text("guessed as well"));
    EXPECT_TRUE(check.sentence.endsWith(text("for guessed as well and 1 more.")));

    // a row that does not say rests on all
    Worksheet plain = sheet();
    plain.take(read, u"I", u"A");
    plain.take(told, u"I", u"A");
    plain.atMost(text("row"), amperes(5), amperes(10), u"A", {});
    EXPECT_EQ(plain.finish({}).weakestInput, text("told by the seller"));
}

// It fails by what fails, however little is known of the rest.
TEST(Worksheet, LetsAFailureRestOnWhatFailsWorstFirst)
{
    const auto guess = given(amperes(5), text("guessed"), Evidence::Assumed);
    const auto other = given(amperes(6), text("guessed as well"), Evidence::Assumed);
    const auto plate = given(amperes(10), text("read off the plate"), Evidence::Nameplate);
    const auto work = [&](bool alsoByGuesses) {
        Worksheet paper = sheet();
        for (const auto &input : {guess, other, plate})
            paper.take(input, u"I", u"A");
        paper.take(notKnown<Current>(text("another limit")), u"I", u"A");
        paper.restsOn(guess, plate);
        paper.atMost(text("roomy"), amperes(alsoByGuesses ? 11 : 5), amperes(10), u"A", {});
        paper.restsOn(plate);
        paper.atMost(text("by its plate"), amperes(12), amperes(10), u"A", {});
        paper.restsOn(other, guess);
        paper.atMost(text("worst"), amperes(alsoByGuesses ? 15 : 5), amperes(10), u"A", {});
        return paper.finish({});
    };
    EXPECT_EQ(work(false).sentence, text("Fails by 20 %."));
    EXPECT_EQ(work(false).weakest, Evidence::Nameplate);
    EXPECT_EQ(work(false).weakestInput, text("read off the plate"));
    EXPECT_EQ(work(true).sentence,
              text("Fails by 50 %, resting on an assumption for guessed as well and 1 more."));
}

// It is met by all of its comparisons, so that none of them may rest on a guess unsaid.
TEST(Worksheet, TellsWeakEvidenceBesideWhatDecides)
{
    const auto plate = given(amperes(10), text("read off the plate"), Evidence::Nameplate);
    const auto heard = given(amperes(4), text("heard of"), Evidence::Community);
    const auto guess = given(amperes(5), text("guessed"), Evidence::Assumed);
    const auto twin = given(amperes(6), text("guessed as well"), Evidence::Assumed);
    Worksheet paper = sheet();
    paper.restsOn(plate);
    paper.atMost(text("deciding"), amperes(9.5), amperes(10), u"A", {});
    paper.restsOn(heard);
    paper.atMost(text("by hearsay"), amperes(3), amperes(10), u"A", {});
    paper.restsOn(guess, plate);
    paper.atMost(text("by guess"), amperes(5), amperes(10), u"A", {});
    paper.restsOn(twin, guess); // each is counted once
    paper.atMost(text("roomiest"), amperes(2), amperes(10), u"A", {});
    const Check check = paper.finish({});
    EXPECT_EQ(check.sentence, text("Tight: 5.0 % to spare; elsewhere resting on an assumption for "
                                   "guessed and 1 more."));
    EXPECT_EQ(check.weakest, Evidence::Nameplate);

    // weak evidence that decides speaks for what is no weaker
    Worksheet weak = sheet();
    weak.restsOn(guess);
    weak.atMost(text("deciding"), amperes(9.5), amperes(10), u"A", {});
    weak.restsOn(twin, heard);
    weak.atMost(text("roomy"), amperes(5), amperes(10), u"A", {});
    EXPECT_EQ(weak.finish({}).sentence,
              text("Tight: 5.0 % to spare, resting on an assumption for guessed."));
}

// Of what is taken later it cannot make use.
TEST(Worksheet, RestsOnNothingThatIsTakenAfterIt)
{
    Worksheet paper = sheet();
    paper.take(given(amperes(10), text("read"), Evidence::Nameplate), u"I", u"A");
    paper.atMost(text("row"), amperes(5), amperes(10), u"A", {});
    paper.take(given(amperes(5), text("guessed"), Evidence::Assumed), u"I", u"A");
    EXPECT_EQ(paper.finish({}).sentence, text("Holds with 50 % to spare."));
}

TEST(Worksheet, SaysWhatWouldTurnItOnlyWhereThereIsSomethingToTurn)
{
    for (const double value : {5.0, 9.5, 12.0}) {
        Worksheet paper = sheet();
        paper.atMost(text("row"), amperes(value), amperes(10), u"A", {});
        paper.turnedBy(text("Less current."));
        EXPECT_EQ(paper.finish({}).turnedBy.isEmpty(), value < 9);
    }
    // 245/0.9 = 272.2…, up to the next of four digits; what fails has to be met
    EXPECT_NEAR(limitThatTurns(amperes(245), Verdict::Tight).si(), 272.3, 1e-9);
    EXPECT_NEAR(limitThatTurns(amperes(453.6), Verdict::Fails).si(), 453.6, 1e-9);
    Worksheet turned = sheet();
    turned.atMost(text("row"), amperes(245), limitThatTurns(amperes(245), Verdict::Tight), u"A",
                  {});
    EXPECT_EQ(turned.finish({}).verdict, Verdict::Holds);
}

// Only of limits is the safest in force; of what a part is, what was measured leads.
TEST(OriginWords, SayWhichOfSeveralValuesIsUsed)
{
    Origin origin;
    origin.evidence = Evidence::Measured;
    EXPECT_EQ(evidenceOf(origin), text("measured"));
    origin.clash = true;
    EXPECT_EQ(evidenceOf(origin), text("measured, values differ, the measured is used"));
    origin.evidence = Evidence::Datasheet;
    EXPECT_EQ(evidenceOf(origin), text("datasheet, values differ, the best founded is used"));
    origin.safest = true;
    EXPECT_EQ(evidenceOf(origin), text("datasheet, values clash, the safest is used"));
}

TEST(Worksheet, SaysOfAnUnknownWhatIsMissingAndNotWhatItRestsOn)
{
    Worksheet paper = sheet();
    paper.take(given(amperes(5), text("guessed"), Evidence::Assumed), u"I", u"A");
    paper.take(notKnown<Current>(text("limit")), u"I", u"A");
    EXPECT_EQ(paper.finish({}).sentence, text("Unknown for want of limit."));
}

// 20 ± 4 % against 19 and 19.5: the worst it may stand for is 19.2.
TEST(Worksheet, HoldsAnUncertainReadingToTheWorstItMayStandFor)
{
    Worksheet clear = sheet();
    clear.readAtLeast(text("reading"), 20.0, 0.04, 19.0, u"", {});
    EXPECT_NEAR(*clear.finish({}).margin, 0.2 / 19, 1e-9);
    Worksheet straddling = sheet();
    straddling.readAtLeast(text("reading"), 20.0, 0.04, 19.5, u"", {});
    const Check check = straddling.finish({});
    EXPECT_EQ(check.verdict, Verdict::Tight);
    EXPECT_EQ(check.margin, 0.0);
    Worksheet out = sheet();
    out.readAtMost(text("reading"), 20.0, 0.04, 19.5, u"", {});
    EXPECT_EQ(out.finish({}).verdict, Verdict::Fails);
}

} // namespace ohmwright
