// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/generated_book.h"

#include "core/parts/life.h"
#include "core/quantity/invariant.h"
#include "tests/support/generated_engineering.h"
#include "tests/support/generated_planning.h"
#include "tests/support/generated_values.h"

#include <QCryptographicHash>

#include <algorithm>
#include <set>

using namespace Qt::StringLiterals;

namespace ohmwright {

namespace {

class BookMaker
{
public:
    BookMaker(std::uint32_t seed, const BookSize &size, Texts texts)
        : m_chance(seed), m_values(m_chance, texts), m_size(size)
    {}

    GeneratedBook make()
    {
        makeSingles();
        makeSources();
        makeCircuits();
        makeMoney();
        makeParts();
        makeBranches();
        makeConnections();
        makeRatings();
        makePartNotes();
        makePapers();
        makeEngineering();
        makeTasks();
        makeAttachments();
        return std::move(m_made);
    }

private:
    template <class R>
    using Ids = std::vector<Id<R>>;

    template <class R>
    R fresh()
    {
        m_lastId += 1 + m_chance.below(1000);
        R row;
        row.id = Id<R>(m_lastId);
        return row;
    }
    template <KeyedRecord R>
    R freshKeyed()
    {
        R row = fresh<R>();
        row.key = m_values.key();
        return row;
    }

    template <class R>
    void keep(std::vector<R> rows)
    {
        m_made.records.all<R>().assign(std::move(rows));
    }
    template <class R>
    std::optional<Id<R>> perhapsOne()
    {
        const auto &rows = m_made.records.all<R>().rows();
        if (rows.empty() || m_chance.oneIn(2))
            return std::nullopt;
        return m_chance.pick(rows).id;
    }
    template <class R>
    const R &one()
    {
        return m_chance.pick(m_made.records.all<R>().rows());
    }
    QString text() { return m_values.text(); }

    void makeSingles()
    {
        Build build;
        build.id = Id<Build>(1);
        build.title = m_values.requiredText();
        build.currency = m_values.currency();
        build.hoursPerWeek = m_chance.between(1, 168);
        build.contingencyPercent = m_chance.between(0, 100);
        build.place = text();
        build.note = text();
        m_own = build.currency;
        keep<Build>({build});

        Vehicle v;
        v.id = Id<Vehicle>(1);
        for (QString *field :
             {&v.make, &v.model, &v.body, &v.vin, &v.registration, &v.engine, &v.fuel, &v.gearbox,
              &v.tyreSize, &v.brakes, &v.weighedWith, &v.structure, &v.note})
            *field = text();
        v.year = m_values.perhaps([&] { return m_chance.between(1880, 2199); });
        v.firstRegistered = m_values.perhapsDate();
        v.weighedOn = m_values.perhapsDate();
        v.odometer = m_values.perhapsAmount(Measure::Length);
        v.wheelbase = m_values.perhapsAmount(Measure::Length);
        for (auto *mass : {&v.kerbMass, &v.grossMassPlate, &v.frontAxlePlate, &v.rearAxlePlate,
                           &v.frontLeft, &v.frontRight, &v.rearLeft, &v.rearRight})
            *mass = m_values.perhapsAmount(Measure::Mass);
        keep<Vehicle>({v});
    }

    void makeSources()
    {
        std::vector<Seller> sellers;
        for (int i = 0; i < m_size.sellers; ++i) {
            auto s = freshKeyed<Seller>();
            s.name = m_values.requiredText();
            s.kind = m_values.word<SellerKind>();
            s.place = text();
            s.contact = text();
            s.note = text();
            sellers.push_back(s);
        }
        keep(std::move(sellers));
        std::vector<Donor> donors;
        for (int i = 0; i < m_size.donors; ++i) {
            auto d = freshKeyed<Donor>();
            d.make = m_values.requiredText();
            d.model = text();
            d.year = m_values.perhaps([&] { return m_chance.between(1880, 2199); });
            d.vin = text();
            d.distance = m_values.perhapsAmount(Measure::Length);
            d.damage = text();
            d.proofOfOwnership = text();
            d.seller = perhapsOne<Seller>();
            d.note = text();
            donors.push_back(d);
        }
        keep(std::move(donors));
        std::vector<PartType> types;
        for (int i = 0; i < m_size.types; ++i) {
            auto t = freshKeyed<PartType>();
            t.make = text();
            t.partNumber = text();
            t.name = m_values.requiredText();
            t.kind = m_values.word<PartKind>();
            t.note = text();
            types.push_back(t);
        }
        keep(std::move(types));
    }

    void makeCircuits()
    {
        std::vector<Circuit> circuits;
        for (int i = 0; i < m_size.circuits; ++i) {
            auto c = freshKeyed<Circuit>();
            c.name = m_values.requiredText();
            c.kind = m_values.word<CircuitKind>();
            c.current = m_values.word<CurrentKind>();
            c.nominalVoltage = m_values.perhapsAmount(Measure::Voltage);
            c.worstVoltage = m_values.perhapsAmount(Measure::Voltage);
            c.worstVoltageFrom = text();
            c.note = text();
            circuits.push_back(c);
        }
        keep(std::move(circuits));
    }

    void makeMoney()
    {
        std::vector<BudgetLine> lines;
        for (int i = 0; i < m_size.lines; ++i) {
            auto l = freshKeyed<BudgetLine>();
            l.name = m_values.requiredText();
            l.allowance = m_values.money(m_own);
            l.position = m_chance.oneIn(10) ? std::numeric_limits<int>::min() : i;
            l.note = text();
            lines.push_back(l);
        }
        keep(std::move(lines));
        std::vector<DayRate> rates;
        std::set<std::pair<QString, QDate>> days;
        for (int i = 0; i < m_size.dayRates; ++i) {
            auto r = freshKeyed<DayRate>();
            r.currency = m_values.currency();
            r.on = m_values.date();
            r.rate = m_values.rate();
            r.source = text();
            if (days.insert({r.currency.code(), r.on}).second)
                rates.push_back(r);
        }
        keep(std::move(rates));
        makePurchases();
    }

    void makePurchases()
    {
        std::vector<Purchase> purchases;
        std::vector<PurchaseItem> items;
        std::vector<Payment> payments;
        for (int i = 0; i < m_size.purchases; ++i) {
            auto p = freshKeyed<Purchase>();
            p.seller = one<Seller>().id;
            p.orderedOn = m_values.date();
            const bool own = m_chance.oneIn(2);
            p.currency = own ? m_own : m_values.currency();
            p.rate = p.currency == m_own ? Rate() : m_values.dayRate();
            p.rateSource = text();
            p.freight = m_values.price(p.currency);
            p.duty = m_values.price(p.currency);
            p.tax = m_values.price(p.currency);
            p.shareBy = m_values.word<ShareBy>();
            p.reference = text();
            p.promisedOn = m_values.perhapsDate();
            p.arrivedOn = m_values.perhapsDate();
            p.note = text();
            purchases.push_back(p);
            const int count = m_chance.between(i == 0 ? 1 : 0, 3);
            for (int position = 0; position < count; ++position) {
                auto item = freshKeyed<PurchaseItem>();
                item.purchase = p.id;
                item.position = position;
                item.name = m_values.requiredText();
                item.count = m_chance.oneIn(5) ? 1000 : m_chance.between(1, 9);
                item.unitPrice = m_values.price(p.currency);
                item.coreCharge = m_values.price(p.currency);
                item.coreReturnedOn = m_values.perhapsDate();
                item.line = perhapsOne<BudgetLine>();
                items.push_back(item);
            }
            const int paid = m_chance.between(i == 0 ? 1 : 0, 2);
            for (int position = 0; position < paid; ++position) {
                auto payment = fresh<Payment>();
                payment.purchase = p.id;
                payment.position = position;
                payment.on = m_values.date();
                payment.amount = m_values.price(p.currency, true);
                payment.note = text();
                payments.push_back(payment);
            }
        }
        keep(std::move(purchases));
        keep(std::move(items));
        keep(std::move(payments));
    }

    void makeParts()
    {
        std::vector<Part> parts;
        std::vector<PartMove> moves;
        for (int i = 0; i < m_size.parts; ++i) {
            auto p = freshKeyed<Part>();
            p.name = m_values.requiredText();
            // one of each kind first, so that every need finds what it may name
            constexpr int kKinds = static_cast<int>(EnumWords<PartKind>::words.size());
            p.kind = i < kKinds ? static_cast<PartKind>(i) : m_values.word<PartKind>();
            p.role = m_values.perhaps([&] { return m_values.word<PartRole>(); });
            p.type = perhapsOne<PartType>();
            p.donor = perhapsOne<Donor>();
            p.bought = perhapsOne<PurchaseItem>();
            if (!parts.empty() && m_chance.oneIn(3))
                p.partOf = m_chance.pick(parts).id;
            if (!parts.empty() && m_chance.oneIn(5))
                p.replacedBy = m_chance.pick(parts).id;
            for (QString *field : {&p.serial, &p.condition, &p.transportDamage, &p.acceptedBecause,
                                   &p.proofOfOwnership, &p.place, &p.warrantyTerms, &p.note})
                *field = text();
            p.claimBy = m_values.perhapsDate();
            p.warrantyUntil = m_values.perhapsDate();
            p.returnUntil = m_values.perhapsDate();
            p.openedOn = m_values.perhapsDate();
            p.openedBecause = p.openedOn ? m_values.requiredText() : text();
            p.reworkedOn = m_values.perhapsDate();
            p.estimate = m_values.perhaps([&] { return m_values.money(m_values.currency()); });
            p.leadDays = m_values.perhaps([&] { return m_chance.between(0, 3650); });
            p.line = perhapsOne<BudgetLine>();
            makeStock(p);
            p.countedTo = m_values.word<CountedTo>();
            makeMoves(p, moves);
            parts.push_back(p);
        }
        keep(std::move(parts));
        keep(std::move(moves));
    }

    void makeStock(Part &p)
    {
        if (m_chance.oneIn(2))
            return;
        const Amount any = m_values.anyAmount();
        p.stock = m_values.amount(any.measure());
        p.leastStock = m_values.perhapsAmount(any.measure());
    }

    // A lawful life: somewhere to start, and from there only where a part of its kind may go.
    void makeMoves(Part &p, std::vector<PartMove> &moves)
    {
        QDate on = m_values.date();
        std::optional<PartState> last;
        const int count = m_chance.between(1, 5);
        for (int position = 0; position < count; ++position) {
            auto move = fresh<PartMove>();
            move.part = p.id;
            move.position = position;
            move.from = last;
            move.to = m_values.word<PartState>();
            if (last) {
                const std::vector<PartState> next = movesFrom(p.kind, *last);
                if (next.empty())
                    break;
                move.to = m_chance.pick(next);
            }
            move.on = on;
            move.note = text();
            moves.push_back(move);
            last = move.to;
            on = std::min(on.addDays(m_chance.below(400)), QDate(2199, 12, 31));
        }
        p.state = *last;
    }

    void makeBranches()
    {
        std::vector<Branch> branches;
        for (int i = 0; i < m_size.branches; ++i) {
            auto b = freshKeyed<Branch>();
            b.name = m_values.requiredText();
            b.circuit = one<Circuit>().id;
            for (QString *field : {&b.from, &b.to, &b.conductor, &b.colour, &b.note})
                *field = text();
            b.continuousCurrent = m_values.perhapsAmount(Measure::Current);
            b.peakCurrent = m_values.perhapsAmount(Measure::Current);
            b.fuse = perhapsOne<Part>();
            b.fuseRating = m_values.perhapsAmount(Measure::Current);
            b.conductorSize = m_values.perhapsAmount(Measure::Area);
            b.conductorLength = m_values.perhapsAmount(Measure::Length);
            branches.push_back(b);
        }
        keep(std::move(branches));
    }

    void makeConnections()
    {
        std::vector<Connection> connections;
        for (const Part &part : m_made.records.all<Part>()) {
            const int count = connections.empty() || m_chance.oneIn(3) ? m_chance.between(1, 2) : 0;
            for (int position = 0; position < count; ++position) {
                auto c = fresh<Connection>();
                c.part = part.id;
                c.position = position;
                c.circuit = one<Circuit>().id;
                const Branch &branch = one<Branch>();
                if (branch.circuit == c.circuit)
                    c.branch = branch.id;
                connections.push_back(c);
            }
        }
        keep(std::move(connections));
    }

    void makeRatings()
    {
        std::vector<Rating> ratings;
        const auto add = [&](Id<Part> part, Id<PartType> type) {
            const int count = m_chance.between(ratings.empty() ? 1 : 0, 3);
            for (int position = 0; position < count; ++position) {
                auto r = fresh<Rating>();
                r.part = part;
                r.type = type;
                r.position = position;
                fillRating(r);
                ratings.push_back(r);
            }
        };
        for (const Part &part : m_made.records.all<Part>())
            add(part.id, {});
        for (const PartType &type : m_made.records.all<PartType>())
            add({}, type.id);
        keep(std::move(ratings));
    }

    void fillRating(Rating &r)
    {
        r.quantity = m_values.word<RatedQuantity>();
        r.kind = m_values.word<RatingKind>();
        r.basis = r.kind == RatingKind::Actual ? RatingBasis::Nominal
                                               : static_cast<RatingBasis>(m_chance.below(3));
        r.current = m_values.perhaps([&] { return m_values.word<CurrentKind>(); });
        if (r.basis == RatingBasis::Peak)
            r.duration = m_values.perhapsAmount(Measure::Duration);
        r.value = m_values.perhaps([&] { return m_values.amount(measureOf(r.quantity), true); });
        r.evidence = m_values.word<Evidence>();
        r.source = text();
        r.on = m_values.perhapsDate();
        r.settled = r.value && m_chance.oneIn(3);
        r.note = text();
    }

    void makePartNotes()
    {
        std::vector<LostFunction> functions;
        for (int i = 0; i < m_size.lostFunctions; ++i) {
            auto f = freshKeyed<LostFunction>();
            f.name = m_values.requiredText();
            f.replacedBy = text();
            f.part = perhapsOne<Part>();
            f.settled = m_chance.oneIn(2);
            f.note = text();
            functions.push_back(f);
        }
        keep(std::move(functions));
        std::vector<GotBack> sums;
        for (int i = 0; i < m_size.gotBack; ++i) {
            auto g = freshKeyed<GotBack>();
            g.name = m_values.requiredText();
            g.amount = m_values.money(m_chance.oneIn(2) ? m_own : m_values.currency());
            g.rate = g.amount.currency() == m_own ? Rate() : m_values.rate();
            g.expectedOn = m_values.perhapsDate();
            g.receivedOn = m_values.perhapsDate();
            g.part = perhapsOne<Part>();
            g.line = perhapsOne<BudgetLine>();
            g.note = text();
            sums.push_back(g);
        }
        keep(std::move(sums));
        std::vector<MassEntry> masses;
        for (int i = 0; i < m_size.masses; ++i) {
            auto m = freshKeyed<MassEntry>();
            m.name = m_values.requiredText();
            m.direction = m_values.word<MassDirection>();
            m.mass = m_values.perhapsAmount(Measure::Mass);
            m.behindFrontAxle =
                m_values.perhaps([&] { return m_values.amount(Measure::Length, true); });
            m.height = m_values.perhapsAmount(Measure::Length);
            m.part = perhapsOne<Part>();
            m.evidence = m_values.word<Evidence>();
            m.note = text();
            masses.push_back(m);
        }
        keep(std::move(masses));
    }

    void makePapers()
    {
        std::vector<Letter> letters;
        for (int i = 0; i < m_size.letters; ++i) {
            auto l = freshKeyed<Letter>();
            l.subject = m_values.requiredText();
            l.toWhom = text();
            l.kind = m_values.word<LetterKind>();
            l.state = m_values.word<LetterState>();
            if (l.state != LetterState::ToAsk)
                l.askedOn = m_values.date();
            l.askAgainOn = m_values.perhapsDate();
            l.answeredOn = m_values.perhapsDate();
            l.validUntil = m_values.perhapsDate();
            l.answerDays = m_values.perhaps([&] { return m_chance.between(0, 3650); });
            l.reference = text();
            l.note = text();
            letters.push_back(l);
        }
        keep(std::move(letters));
        std::vector<TestRecord> tests;
        for (int i = 0; i < m_size.tests; ++i) {
            auto t = freshKeyed<TestRecord>();
            t.name = m_values.requiredText();
            t.kind = m_values.word<TestKind>();
            t.part = perhapsOne<Part>();
            t.circuit = perhapsOne<Circuit>();
            for (QString *field : {&t.method, &t.limitText, &t.instrument, &t.doneBy, &t.note})
                *field = text();
            if (m_chance.oneIn(2)) {
                t.limit = m_values.anyAmount();
                t.value = m_values.perhapsAmount(t.limit->measure());
            }
            t.result = m_values.word<TestResult>();
            t.doneOn = t.result == TestResult::Open ? m_values.perhapsDate()
                                                    : std::optional(m_values.date());
            tests.push_back(t);
        }
        makeSteps(tests);
        keep(std::move(tests));
    }

    // A test that is passed has passed every step.
    void makeSteps(const std::vector<TestRecord> &tests)
    {
        std::vector<TestStep> steps;
        for (const TestRecord &test : tests) {
            const int count = m_chance.between(steps.empty() ? 1 : 0, 2);
            for (int position = 0; position < count; ++position) {
                auto s = fresh<TestStep>();
                s.test = test.id;
                s.position = position;
                s.name = m_values.requiredText();
                for (QString *field : {&s.expected, &s.stopIf, &s.seen})
                    *field = text();
                s.result = test.result == TestResult::Passed ? TestResult::Passed
                                                             : m_values.word<TestResult>();
                steps.push_back(s);
            }
        }
        keep(std::move(steps));
    }

    void makeEngineering()
    {
        EngineeringMaker(m_chance, m_values, m_made.records, m_lastId, m_size).make();
    }

    void makeTasks()
    {
        std::vector<Task> tasks;
        std::vector<TaskNeed> needs;
        for (int i = 0; i < m_size.tasks; ++i) {
            auto t = freshKeyed<Task>();
            t.title = m_values.requiredText();
            t.milestone = m_chance.oneIn(6);
            t.area = text();
            t.highVoltage = m_chance.oneIn(4);
            t.workMinutes = m_chance.oneIn(9) ? 600000 : m_chance.below(2000);
            t.waitDays = m_chance.oneIn(9) ? 3650 : m_chance.below(30);
            t.startedOn = m_values.perhapsDate();
            if (t.milestone) {
                t.fixedOn = m_values.perhapsDate();
                t.targetOn = m_values.perhapsDate();
            }
            t.note = text();
            const bool mayBeDone = makeNeeds(t, tasks, needs);
            t.state = m_values.word<TaskState>();
            if (t.state == TaskState::Done && !mayBeDone)
                t.state = TaskState::Open;
            if (t.state == TaskState::Done)
                t.doneOn = m_values.date();
            tasks.push_back(t);
        }
        keep(std::move(tasks));
        keep(std::move(needs));
    }

    // Whether every task it waits on is done. It waits on earlier ones only, so there is no loop.
    bool makeNeeds(const Task &task, const std::vector<Task> &earlier, std::vector<TaskNeed> &needs)
    {
        bool allDone = true;
        const int count = m_chance.between(needs.empty() ? 1 : 0, 4);
        for (int position = 0; position < count; ++position) {
            auto n = fresh<TaskNeed>();
            n.task = task.id;
            n.position = position;
            n.kind = m_values.word<NeedKind>();
            if (n.kind == NeedKind::Task && earlier.empty())
                n.kind = NeedKind::Person;
            n.what = text();
            if (n.kind == NeedKind::Task) {
                const Task &before = m_chance.pick(earlier);
                n.after = before.id;
                allDone = allDone && before.state == TaskState::Done;
            } else {
                fillNeed(n);
            }
            needs.push_back(n);
        }
        return allDone;
    }

    void fillNeed(TaskNeed &n)
    {
        switch (n.kind) {
        case NeedKind::Task:
            return;
        case NeedKind::Part:
            n.part = one<Part>().id;
            n.state =
                m_values.perhaps([&] { return static_cast<PartState>(m_chance.between(1, 4)); });
            return;
        case NeedKind::Figure:
            n.part = one<Part>().id;
            n.quantity = m_values.word<RatedQuantity>();
            n.basis = m_values.perhaps([&] { return m_values.word<RatingBasis>(); });
            return;
        case NeedKind::Tool:
            n.part = partOfKind(PartKind::Tool).id;
            n.state =
                m_values.perhaps([&] { return static_cast<PartState>(m_chance.between(1, 4)); });
            return;
        case NeedKind::Consumable: {
            const Part &part = partOfKind(PartKind::Consumable);
            n.part = part.id;
            n.amount = part.stock ? m_values.amount(part.stock->measure())
                                  : m_values.amount(m_values.anyAmount().measure());
            return;
        }
        case NeedKind::Money:
            n.money = m_values.money(m_values.currency());
            n.what = m_values.requiredText();
            n.metOn = m_values.perhapsDate();
            return;
        case NeedKind::Service:
            if (m_chance.oneIn(2))
                n.part = partOfKind(PartKind::Service).id;
            else
                n.what = m_values.requiredText();
            n.metOn = m_values.perhapsDate();
            n.eachTime = m_chance.oneIn(3) ? std::optional(m_chance.oneIn(2)) : std::nullopt;
            return;
        case NeedKind::Test:
            n.test = one<TestRecord>().id;
            return;
        case NeedKind::Letter:
            n.letter = one<Letter>().id;
            n.eachTime = m_chance.oneIn(3) ? std::optional(true) : std::nullopt;
            return;
        case NeedKind::Interface:
            n.interface = one<Interface>().id;
            return;
        case NeedKind::Permit:
            if (m_chance.oneIn(2)) {
                n.permit = one<WorkPermit>().id;
                return;
            }
            [[fallthrough]];
        case NeedKind::Person:
            n.what = m_values.requiredText();
            n.metOn = m_values.perhapsDate();
            return;
        }
    }

    const Part &partOfKind(PartKind kind)
    {
        const auto &parts = m_made.records.all<Part>().rows();
        std::size_t at = static_cast<std::size_t>(m_chance.below(static_cast<int>(parts.size())));
        while (parts[at].kind != kind)
            at = (at + 1) % parts.size();
        return parts[at];
    }

    void makeAttachments()
    {
        std::vector<Attachment> attachments;
        for (int i = 0; i < m_size.attachments; ++i) {
            auto a = freshKeyed<Attachment>();
            for (QString *field : {&a.title, &a.fileName, &a.mediaType, &a.url, &a.note})
                *field = text();
            a.kind = m_values.word<AttachmentKind>();
            if (a.kind == AttachmentKind::Link)
                a.url = m_values.requiredText();
            else
                a.sha256 = makeBlob(i);
            a.readOn = m_values.perhapsDate();
            a.takenOn = m_values.perhapsDate();
            a.onSheet = m_chance.oneIn(2);
            attachTo(a);
            attachments.push_back(a);
        }
        keep(std::move(attachments));
    }

    QString makeBlob(int number)
    {
        QByteArray bytes; // the first is empty, later ones may be the same as an earlier one
        if (number > 0) {
            const int length = m_chance.below(4000);
            for (int i = 0; i < length; ++i)
                bytes += static_cast<char>(m_chance.below(256));
            if (m_chance.oneIn(4))
                bytes = m_made.blobs.empty() ? bytes : m_made.blobs.begin()->second;
        }
        const QString sha = QString::fromLatin1(
            QCryptographicHash::hash(bytes, QCryptographicHash::Sha256).toHex());
        m_made.blobs[sha] = bytes;
        return sha;
    }

    void attachTo(Attachment &a)
    {
        switch (m_chance.below(9)) {
        case 0:
            a.ofVehicle = true;
            return;
        case 1:
            a.part = perhapsOne<Part>();
            return;
        case 2:
            a.type = perhapsOne<PartType>();
            return;
        case 3:
            a.donor = perhapsOne<Donor>();
            return;
        case 4:
            a.purchase = perhapsOne<Purchase>();
            return;
        case 5:
            a.task = perhapsOne<Task>();
            return;
        case 6:
            a.test = perhapsOne<TestRecord>();
            return;
        case 7:
            a.letter = perhapsOne<Letter>();
            return;
        default:
            return;
        }
    }

    Chance m_chance;
    ValueMaker m_values;
    BookSize m_size;
    Currency m_own;
    std::int64_t m_lastId = 1'000'000;
    GeneratedBook m_made;
};

} // namespace

BookSize BookSize::tiny()
{
    return {.sellers = 1,
            .donors = 1,
            .types = 1,
            .circuits = 1,
            .branches = 1,
            .lines = 1,
            .dayRates = 1,
            .purchases = 1,
            .parts = 6,
            .lostFunctions = 1,
            .gotBack = 1,
            .tasks = 3,
            .letters = 1,
            .tests = 1,
            .masses = 1,
            .figures = 1,
            .curves = 1,
            .interfaces = 1,
            .wires = 1,
            .safetySystems = 1,
            .permits = 1,
            .attachments = 2,
            .workingTimes = 1,
            .choices = 1,
            .workEntries = 1};
}

BookSize BookSize::usual()
{
    return {.sellers = 40,
            .donors = 12,
            .types = 80,
            .circuits = 8,
            .branches = 40,
            .lines = 20,
            .dayRates = 100,
            .purchases = 120,
            .parts = 300,
            .lostFunctions = 20,
            .gotBack = 10,
            .tasks = 150,
            .letters = 15,
            .tests = 60,
            .masses = 60,
            .figures = 200,
            .curves = 6,
            .interfaces = 8,
            .wires = 120,
            .safetySystems = 12,
            .permits = 10,
            .attachments = 500,
            .workingTimes = 4,
            .choices = 4,
            .workEntries = 300};
}

BookSize BookSize::large()
{
    return {.sellers = 800,
            .donors = 200,
            .types = 2000,
            .circuits = 40,
            .branches = 800,
            .lines = 200,
            .dayRates = 1000,
            .purchases = 6000,
            .parts = 20000,
            .lostFunctions = 100,
            .gotBack = 200,
            .tasks = 2000,
            .letters = 200,
            .tests = 1000,
            .masses = 1000,
            .figures = 4000,
            .curves = 60,
            .interfaces = 80,
            .wires = 2000,
            .safetySystems = 60,
            .permits = 100,
            .attachments = 2000,
            .workingTimes = 6,
            .choices = 20,
            .workEntries = 4000};
}

GeneratedBook generateBook(std::uint32_t seed, const BookSize &size, Texts texts)
{
    GeneratedBook made = BookMaker(seed, size, texts).make();
    addPlanning(made.records, seed, size, texts);
    return made;
}

Outcome fill(Book &book, const GeneratedBook &generated)
{
    for (const auto &[sha, bytes] : generated.blobs) {
        const Result<QString> kept = book.keepBlob(bytes);
        if (!kept)
            return fail(kept.error());
        require(*kept == sha, "a blob keeps its name");
    }
    return book.replaceAll(generated.records);
}

} // namespace ohmwright
