// SPDX-License-Identifier: GPL-3.0-or-later
// ohmwright log-part BOOK --name NAME …
#include "core/parts/log_part.h"

#include "app/commands/commands.h"
#include "core/book/book.h"
#include "core/parts/questions.h"

#include <QCoreApplication>
#include <QFile>
#include <QFileInfo>
#include <QJsonArray>
#include <QMimeDatabase>
#include <QRegularExpression>

namespace ohmwright {

namespace {

const NumberStyle kPoint = NumberStyle::pointDecimal();

tl::unexpected<Problem> bad(const QString &option, const QString &sentence)
{
    return fail(ProblemCode::BadInput, sentence, {}, QStringLiteral("--") + option);
}

// Reads options one by one; the first Problem stays and is what is told.
class Reader
{
    Q_DECLARE_TR_FUNCTIONS(LogPartCommand)

public:
    Reader(const QCommandLineParser &options, const Book &book) : m_options(options), m_book(book)
    {}

    Outcome outcome;

    [[nodiscard]] bool has(const char *name) const { return m_options.isSet(QLatin1String(name)); }
    [[nodiscard]] QString text(const char *name) const
    {
        return m_options.value(QLatin1String(name)).trimmed();
    }
    [[nodiscard]] QStringList texts(const char *name) const
    {
        return m_options.values(QLatin1String(name));
    }

    template <class T>
    std::optional<T> keep(const char *name, const Result<T> &result)
    {
        if (result)
            return *result;
        if (outcome)
            outcome = bad(QLatin1String(name), result.error().sentence);
        return std::nullopt;
    }

    void refuse(const char *name, const QString &sentence)
    {
        if (outcome)
            outcome = bad(QLatin1String(name), sentence);
    }

    std::optional<Money> money(const char *name, Currency fallback)
    {
        return has(name) ? keep(name, parseMoney(text(name), kPoint, fallback)) : std::nullopt;
    }

    std::optional<int> number(const char *name)
    {
        if (!has(name))
            return std::nullopt;
        bool isNumber = false;
        const int value = text(name).toInt(&isNumber);
        if (!isNumber)
            refuse(name, tr("“%1” is not a whole number.").arg(text(name)));
        return value;
    }

    template <WordedEnum E>
    E word(const char *name, E otherwise)
    {
        if (!has(name))
            return otherwise;
        if (const auto value = fromWord<E>(text(name)))
            return *value;
        QStringList words;
        for (const char *w : EnumWords<E>::words)
            words << QLatin1String(w);
        refuse(name, tr("“%1” is none of: %2.").arg(text(name), words.join(tr(", "))));
        return otherwise;
    }

    template <class R>
    std::optional<Id<R>> existing(const char *name)
    {
        if (!has(name))
            return std::nullopt;
        return existing<R>(name, text(name));
    }

    template <class R>
    std::optional<Id<R>> existing(const char *name, const QString &key)
    {
        if (const R *row = m_book.records().byKey<R>(key))
            return row->id;
        refuse(name, tr("The book has no “%1” among its %2.")
                         .arg(key, QLatin1String(RecordTraits<R>::plural)));
        return std::nullopt;
    }

private:
    const QCommandLineParser &m_options;
    const Book &m_book;
};

// "500 A for 10 s": the value, and how long a peak may last.
struct ValueText
{
    QString value, duration;
};

ValueText splitDuration(const QString &text)
{
    static const QRegularExpression form(QStringLiteral("^(.*\\S)\\s+for\\s+(\\S.*)$"),
                                         QRegularExpression::CaseInsensitiveOption);
    const QRegularExpressionMatch found = form.match(text);
    return found.hasMatch() ? ValueText{found.captured(1), found.captured(2)} : ValueText{text, {}};
}

// "current,peak,DC=500 A for 10 s,datasheet,page 2": what, then the value or ? and of a peak its
// duration, evidence and source.
Result<LogRating> parseRating(const QString &text)
{
    const auto tr = [](const char *t) {
        return QCoreApplication::translate("LogPartCommand", t);
    };
    const QString form =
        tr("Write a rating as "
           "QUANTITY[,limit|actual][,continuous|peak|least][,DC|AC]=VALUE[ for DURATION]"
           "[,EVIDENCE[,SOURCE]], with ? for an unknown value; only a peak has a duration.");
    const auto wrong = [&](const QString &sentence) {
        return fail(ProblemCode::BadInput, sentence + u' ' + form);
    };
    const qsizetype equals = text.indexOf(u'=');
    if (equals < 0)
        return wrong(tr("“%1” has no value.").arg(text));
    LogRating rating;
    bool kindGiven = false;
    bool basisGiven = false;
    const QStringList names = text.left(equals).split(u',');
    const auto quantity = fromWord<RatedQuantity>(names.front().trimmed());
    if (!quantity)
        return wrong(tr("“%1” is not a rated quantity.").arg(names.front().trimmed()));
    rating.figure.quantity = *quantity;
    for (const QString &raw : names.mid(1)) {
        const QString name = raw.trimmed();
        if (const auto kind = fromWord<RatingKind>(name)) {
            rating.figure.kind = *kind;
            kindGiven = true;
        } else if (const auto basis = fromWord<RatingBasis>(name)) {
            rating.figure.basis = *basis;
            basisGiven = true;
        } else if (const auto current = fromWord<CurrentKind>(name)) {
            rating.figure.current = current;
        } else {
            return wrong(tr("“%1” is not understood.").arg(name));
        }
    }
    // from mass on, the quantities say what a part is
    if (!kindGiven && *quantity >= RatedQuantity::Mass)
        rating.figure.kind = RatingKind::Actual;
    if (rating.figure.kind == RatingKind::Actual)
        rating.figure.basis = RatingBasis::Nominal;
    const QStringList values = text.mid(equals + 1).split(u',');
    const auto &[value, duration] = splitDuration(values.front().trimmed());
    if (!duration.isEmpty()) {
        // what is withstood for some time only is a peak, said or not
        if (rating.figure.kind == RatingKind::Limit && !basisGiven)
            rating.figure.basis = RatingBasis::Peak;
        if (rating.figure.basis != RatingBasis::Peak)
            return wrong(tr("“%1” is no peak, and has no duration.").arg(text.left(equals)));
        const Result<Amount> read = parseAmount(duration, kPoint, Measure::Duration);
        if (!read)
            return fail(read.error());
        rating.duration = *read;
    }
    if (value != QLatin1String("?")) {
        const Result<Amount> amount = parseAmount(value, kPoint, measureOf(*quantity));
        if (!amount)
            return fail(amount.error());
        rating.value = *amount;
    }
    if (values.size() > 1) {
        const auto evidence = fromWord<Evidence>(values[1].trimmed());
        if (!evidence)
            return wrong(tr("“%1” is no evidence.").arg(values[1].trimmed()));
        rating.evidence = *evidence;
    }
    rating.source = QStringList(values.mid(2)).join(u',').trimmed();
    return rating;
}

Result<LogPhoto> readPhoto(const QString &path)
{
    QFile file(path);
    if (!file.open(QIODevice::ReadOnly))
        return fail(ProblemCode::NotFound,
                    QCoreApplication::translate("LogPartCommand", "“%1” cannot be read: %2.")
                        .arg(path, file.errorString()));
    LogPhoto photo;
    photo.bytes = file.readAll();
    photo.fileName = QFileInfo(path).fileName();
    photo.mediaType =
        QMimeDatabase().mimeTypeForFileNameAndData(photo.fileName, photo.bytes).name();
    return photo;
}

class LogPartCommand final : public Command
{
    Q_DECLARE_TR_FUNCTIONS(LogPartCommand)

public:
    [[nodiscard]] QString name() const override { return QStringLiteral("log-part"); }
    [[nodiscard]] QString summary() const override
    {
        return tr("Logs a newly bought part: seller, donor, price, ratings, warranty. One edit.");
    }
    [[nodiscard]] QString arguments() const override
    {
        return QStringLiteral("BOOK --name NAME [options]");
    }

    void describe(QCommandLineParser &parser) const override
    {
        const auto add = [&](const char *name, const QString &text, const QString &value) {
            parser.addOption({QString::fromLatin1(name), text, value});
        };
        add("name", tr("What it is."), tr("text"));
        add("kind", tr("unit, module, hardware, tool, consumable or service."), tr("word"));
        add("state", tr("wanted, ordered or in hand (default)."), tr("word"));
        add("date", tr("The day it was bought, 2026-03-01; else today."), tr("date"));
        add("seller", tr("Key or name; a new name makes a new seller."), tr("name"));
        add("seller-kind", tr("Of a new seller."), tr("word"));
        add("donor", tr("Key, or “Make Model” for a new donor."), tr("name"));
        add("order", tr("Key of an order already in the book."), tr("key"));
        add("price", tr("Unit price with its currency, “1200 GBP”."), tr("money"));
        add("count", tr("How many at that price."), tr("number"));
        add("freight", tr("Shared costs of a new order."), tr("money"));
        add("duty", tr("Shared costs of a new order."), tr("money"));
        add("tax", tr("Shared costs of a new order."), tr("money"));
        add("core", tr("Core charge, refunded when the old unit goes back."), tr("money"));
        add("rate", tr("Book currency for one unit of the price's currency."), tr("decimal"));
        add("estimate", tr("Of a wanted part: what it should cost."), tr("money"));
        add("lead-days", tr("From order to arrival."), tr("number"));
        parser.addOption({QStringLiteral("unpaid"), tr("Ordered, not paid yet.")});
        add("line", tr("Key of the budget line."), tr("key"));
        add("within", tr("Key of the assembly it sits in."), tr("key"));
        add("type", tr("Key of its type."), tr("key"));
        add("circuit", tr("Key of a circuit it is on; may be repeated."), tr("key"));
        add("rating",
            tr("“voltage,limit,DC=450 V,nameplate,source”; a peak “current,peak,DC=500 A for 10 "
               "s,datasheet”; ? for unknown; may be repeated."),
            tr("rating"));
        add("warranty-days", tr("From the date."), tr("number"));
        add("return-days", tr("From the date."), tr("number"));
        add("serial", tr("Serial number."), tr("text"));
        add("condition", tr("As it arrived."), tr("text"));
        add("place", tr("Shelf or box."), tr("text"));
        add("note", tr("Anything else."), tr("text"));
        add("photo", tr("A picture or paper to keep in the book; may be repeated."), tr("file"));
    }

    int run(const QCommandLineParser &options, const QStringList &positional,
            CommandIo io) const override
    {
        if (positional.size() != 1)
            return refuse(io, tr("Name one book; all else goes with an option: ohmwright log-part "
                                 "BOOK --name NAME."));
        const Result<std::unique_ptr<Book>> book = openBook(positional[0], io.clock);
        if (!book)
            return refuse(io, book.error());
        const Result<LogEntry> entry = entryFrom(options, **book, io.clock.today());
        if (!entry)
            return refuse(io, asTyped(entry.error()));
        const Result<Id<Part>> id = logPart(**book, *entry);
        if (!id)
            return refuse(io, asTyped(id.error()));
        const Part &part = *(*book)->records().find(*id);
        const std::vector<Question> questions = openQuestions((*book)->records(), *id);
        if (options.isSet(QStringLiteral("json"))) {
            QJsonArray open;
            for (const Question &q : questions)
                open << ohmwright::describe(q.figure);
            printJson(
                io, {{QStringLiteral("part"), part.key}, {QStringLiteral("open_questions"), open}});
        } else {
            io.out << tr("Logged “%1” as %2.").arg(part.name, part.key) << '\n';
            for (const Question &q : questions)
                io.out << tr("Open question: %1, asked by %2.")
                              .arg(ohmwright::describe(q.figure), q.askedBy.join(tr(", ")))
                       << '\n';
            io.out.flush();
        }
        return kExitDone;
    }

private:
    // The field at fault by the option it was typed with.
    static Problem asTyped(Problem problem)
    {
        static const std::map<QString, QString> kOptions{
            {QStringLiteral("unit_price"), QStringLiteral("price")},
            {QStringLiteral("on"), QStringLiteral("date")},
            {QStringLiteral("core_charge"), QStringLiteral("core")}};
        if (problem.where.isEmpty() || problem.where.startsWith(u'-'))
            return problem;
        const auto other = kOptions.find(problem.where);
        problem.where =
            QStringLiteral("--") +
            (other == kOptions.end() ? QString(problem.where).replace(u'_', u'-') : other->second);
        return problem;
    }

    static Result<LogEntry> entryFrom(const QCommandLineParser &options, const Book &book,
                                      QDate today)
    {
        Reader in(options, book);
        LogEntry entry;
        entry.name = in.text("name");
        entry.kind = in.word("kind", PartKind::Unit);
        entry.state = in.word("state", PartState::InHand);
        entry.on = in.has("date")
                       ? in.keep("date", parseDate(in.text("date"), today)).value_or(today)
                       : today;
        readOrigin(in, book, entry);
        entry.line = in.existing<BudgetLine>("line");
        entry.partOf = in.existing<Part>("within");
        entry.type = in.existing<PartType>("type");
        for (const QString &key : in.texts("circuit"))
            if (const auto circuit = in.existing<Circuit>("circuit", key))
                entry.circuits.push_back(*circuit);
        for (const QString &text : in.texts("rating"))
            if (const auto rating = in.keep("rating", parseRating(text)))
                entry.ratings.push_back(*rating);
        for (const QString &path : in.texts("photo"))
            if (auto photo = in.keep("photo", readPhoto(path)))
                entry.photos.push_back(std::move(*photo));
        entry.warrantyDays = in.number("warranty-days");
        entry.returnDays = in.number("return-days");
        entry.leadDays = in.number("lead-days");
        entry.estimate = in.money("estimate", book.records().build().currency);
        entry.serial = in.text("serial");
        entry.condition = in.text("condition");
        entry.place = in.text("place");
        entry.note = in.text("note");
        if (!in.outcome)
            return fail(in.outcome.error());
        return entry;
    }

    static void readOrigin(Reader &in, const Book &book, LogEntry &entry)
    {
        if (in.has("donor"))
            entry.donor = donorNamed(book.records(), in.text("donor"));
        if (!in.has("price")) {
            if (in.has("seller") || in.has("order"))
                in.refuse("price", tr("A seller or an order goes with a price."));
            for (const char *cost : {"freight", "duty", "tax", "core"})
                if (in.has(cost))
                    in.refuse("price", tr("There are costs of an order, but no price. Type 0 if "
                                          "the part itself was free."));
            for (const char *detail : {"count", "rate", "unpaid", "seller-kind"})
                if (in.has(detail))
                    in.refuse(detail, tr("It goes with a price, and there is none."));
            return;
        }
        const Currency own = book.records().build().currency;
        LogPrice price;
        price.purchase = in.existing<Purchase>("order");
        if (!price.purchase && !in.has("seller"))
            in.refuse("seller", tr("Say who sold it."));
        if (in.has("order"))
            refuseWhatTheOrderHas(in, book.records(), price.purchase);
        price.seller = sellerNamed(book.records(), in.text("seller"),
                                   in.word("seller-kind", SellerKind::Private));
        price.unitPrice = in.money("price", own).value_or(Money());
        const Currency currency = price.unitPrice.currency();
        price.freight = in.money("freight", currency).value_or(Money::zero(currency));
        price.duty = in.money("duty", currency).value_or(Money::zero(currency));
        price.tax = in.money("tax", currency).value_or(Money::zero(currency));
        price.coreCharge = in.money("core", currency).value_or(Money::zero(currency));
        price.count = in.number("count").value_or(1);
        price.paid = !in.has("unpaid");
        if (in.has("rate"))
            price.rate = in.keep("rate", Rate::parse(in.text("rate"), kPoint));
        entry.price = price;
    }

    // None of it would change the order, and nothing is dropped without a word.
    static void refuseWhatTheOrderHas(Reader &in, const Records &records,
                                      std::optional<Id<Purchase>> order)
    {
        for (const char *cost : {"freight", "duty", "tax", "rate"})
            if (in.has(cost))
                in.refuse(cost, tr("The part joins an order whose freight, duty, tax and rate stay "
                                   "as they are."));
        const Purchase *purchase = records.find(order);
        const Seller *seller = purchase ? records.find(purchase->seller) : nullptr;
        if (!seller || !in.has("seller"))
            return;
        const ThereOrNew<Seller> named =
            sellerNamed(records, in.text("seller"), SellerKind::Private);
        if (named != ThereOrNew<Seller>(seller->id))
            in.refuse("seller", tr("That order is from %1.").arg(seller->name));
    }

    static ThereOrNew<Seller> sellerNamed(const Records &records, const QString &name,
                                          SellerKind kind)
    {
        for (const Seller &seller : records.all<Seller>())
            if (seller.key == name || seller.name.compare(name, Qt::CaseInsensitive) == 0)
                return seller.id;
        Seller seller;
        seller.name = name;
        seller.kind = kind;
        return seller;
    }

    static ThereOrNew<Donor> donorNamed(const Records &records, const QString &name)
    {
        for (const Donor &donor : records.all<Donor>())
            if (donor.key == name ||
                QString(donor.make + u' ' + donor.model).compare(name, Qt::CaseInsensitive) == 0)
                return donor.id;
        Donor donor;
        donor.make = name.section(u' ', 0, 0);
        donor.model = name.section(u' ', 1);
        return donor;
    }
};

} // namespace

std::unique_ptr<Command> makeLogPartCommand()
{
    return std::make_unique<LogPartCommand>();
}

} // namespace ohmwright
