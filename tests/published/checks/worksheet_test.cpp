// SPDX-License-Identifier: GPL-3.0-or-later
// The paper checks are worked on: how margins are told, and which input a verdict is said to rest
// on. No standard has it; the figures are worked by hand.
#include "core/checks/margin_words.h"
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
              text("Holds with 20 % to spare, resting on a seller's word for told by the seller."));
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

TEST(Worksheet, SaysOfAnUnknownWhatIsMissingAndNotWhatItRestsOn)
{
    Worksheet paper = sheet();
    paper.take(given(amperes(5), text("guessed"), Evidence::Assumed), u"I", u"A");
    paper.take(notKnown<Current>(text("limit")), u"I", u"A");
    EXPECT_EQ(paper.finish({}).sentence, text("Unknown: not known is limit."));
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
