using System.Collections.Immutable;
using System.Globalization;
using Schematic.Language;
using Schematic.Model;

namespace Schematic.Binding;

/// <summary>
/// The clauses of one statement as values: units checked, ranges checked, each stated once. What is missing or wrong is
/// reported and comes back as null.
/// </summary>
internal sealed class ClauseReader
{
    /// <summary>A price above it is a slip, and would not add up for a hundred thousand sets.</summary>
    private const decimal HighestPrice = 1_000_000_000;

    private readonly Dictionary<string, ClauseSyntax> _byKeyword = new(StringComparer.Ordinal);
    private readonly ImmutableArray<ClauseSyntax> _clauses;
    private readonly Scope _scope;
    private readonly BindingReporter _report;

    /// <summary>
    /// Wraps clauses; <paramref name="mayRepeat"/> tells which keywords may stand more than once.
    /// </summary>
    public ClauseReader(
        ImmutableArray<ClauseSyntax> clauses, Scope scope, BindingReporter report, params IReadOnlyCollection<string> mayRepeat)
    {
        _clauses = clauses;
        _scope = scope;
        _report = report;
        foreach (var clause in clauses)
        {
            if (clause.Keyword.Length == 0 || mayRepeat.Contains(clause.Keyword)) continue;
            if (!_byKeyword.TryAdd(clause.Keyword, clause))
                report.StatedTwice(scope.At(clause.KeywordSpan), $"`{clause.Keyword}`", scope.At(_byKeyword[clause.Keyword].KeywordSpan));
        }
    }

    /// <summary>The clauses as written.</summary>
    public ImmutableArray<ClauseSyntax> Clauses => _clauses;

    /// <summary>The clause of a keyword that stands once, or null.</summary>
    public ClauseSyntax? Find(string keyword) => _byKeyword.GetValueOrDefault(keyword);

    /// <summary>Whether a keyword stands there.</summary>
    public bool Has(string keyword) => _byKeyword.ContainsKey(keyword);

    /// <summary>The first word after a keyword, or null.</summary>
    public WordSyntax? Word(string keyword) => Find(keyword)?.All<WordSyntax>().FirstOrDefault();

    /// <summary>The one of several keywords that stands there, or null; two of them contradict each other.</summary>
    public string? Choice(params ReadOnlySpan<string> keywords)
    {
        ClauseSyntax? chosen = null;
        foreach (var keyword in keywords)
        {
            if (Find(keyword) is not { } clause) continue;
            if (chosen is null)
            {
                chosen = clause;
                continue;
            }

            var (first, second) = chosen.Span.Start < clause.Span.Start ? (chosen, clause) : (clause, chosen);
            _report.Contradiction(
                _scope.At(second.KeywordSpan), $"`{second.Keyword}` contradicts `{first.Keyword}`.", "Keep the one that holds.",
                _scope.At(first.KeywordSpan));
        }

        return chosen?.Keyword;
    }

    /// <summary>The quantity after a keyword, in the unit kept for its dimension; it must be above zero unless zero is allowed.</summary>
    public double? Quantity(string keyword, Dimension dimension, string example, bool zeroAllowed = false, QuantityRange? range = null) =>
        Find(keyword)?.All<QuantitySyntax>().FirstOrDefault() is { } quantity ? Value(quantity, dimension, example, zeroAllowed, range) : null;

    /// <summary>
    /// The values that stand for themselves, one for each dimension; others are reported with <paramref name="example"/>.
    /// </summary>
    public Dictionary<Dimension, QuantitySyntax> Ratings(string example, params IReadOnlyCollection<Dimension> dimensions)
    {
        var found = new Dictionary<Dimension, QuantitySyntax>();
        var stated = _clauses.Where(c => c.Keyword.Length == 0).SelectMany(c => c.All<QuantitySyntax>()).Select(q => q.Dimension).ToHashSet();
        foreach (var quantity in _clauses.Where(c => c.Keyword.Length == 0).SelectMany(c => c.All<QuantitySyntax>()))
        {
            if (!dimensions.Contains(quantity.Dimension))
                _report.WrongUnit(_scope.At(quantity.Span), quantity, example, possible: dimensions.Where(d => !stated.Contains(d)));
            else if (!found.TryAdd(quantity.Dimension, quantity))
                _report.StatedTwice(_scope.At(quantity.Span), UnitWords.Kind(quantity.Dimension), _scope.At(found[quantity.Dimension].Span));
            else if (quantity.Dimension != Dimension.Gauge)
                Value(quantity, quantity.Dimension, example);
        }

        return found;
    }

    /// <summary>A quantity of a dimension, checked.</summary>
    public double? Value(
        QuantitySyntax quantity, Dimension dimension, string example, bool zeroAllowed = false, QuantityRange? range = null)
    {
        if (quantity.Dimension != dimension)
        {
            _report.WrongUnit(_scope.At(quantity.Span), quantity, example, possible: [dimension]);
            return null;
        }

        var inRange = double.IsFinite(quantity.Value) && (quantity.Value > 0 || (zeroAllowed && quantity.Value == 0));
        range ??= QuantityRange.Of(dimension);
        if (inRange && ((quantity.Value >= range.Least && quantity.Value <= range.Most) || quantity.Value == 0)) return quantity.Value;
        if (inRange)
        {
            _report.OutOfRange(_scope.At(quantity.Span), $"{quantity.Number} {quantity.Unit} is out of range here.", $"Give {range.Words}.");
            return null;
        }

        _report.OutOfRange(
            _scope.At(quantity.Span), $"{quantity.Number} {quantity.Unit} is out of range.",
            zeroAllowed ? "Give a value of zero or more." : "Give a value above zero.");
        return null;
    }

    /// <summary>The whole number after a keyword, within bounds.</summary>
    public int? Count(string keyword, int least, int most) =>
        Find(keyword)?.All<NumberSyntax>().FirstOrDefault() is { } number ? Whole(number, keyword, least, most) : null;

    /// <summary>The whole numbers after a keyword; null when one of them is out of bounds.</summary>
    public ImmutableArray<int>? Counts(string keyword, int least, int most)
    {
        if (Find(keyword) is not { } clause) return null;
        var numbers = clause.All<NumberSyntax>().Select(n => Whole(n, keyword, least, most)).ToList();
        return numbers.Contains(null) ? null : [.. numbers.Select(n => n!.Value)];
    }

    /// <summary>A whole number within bounds.</summary>
    public int? Whole(NumberSyntax number, string what, int least, int most)
    {
        if (number.Value == Math.Floor(number.Value) && number.Value >= least && number.Value <= most) return (int)number.Value;
        _report.OutOfRange(
            _scope.At(number.Span), $"{number.Text} is out of range for `{what}`.", $"Give a whole number from {least} to {most}.");
        return null;
    }

    /// <summary>The angles after a keyword, in degrees; a turn either way at most.</summary>
    public ImmutableArray<double> Degrees(string keyword) =>
        Find(keyword) is { } clause ? [.. clause.All<NumberSyntax>().Select(n => Degrees(n, keyword) ?? 0)] : [];

    /// <summary>An angle in degrees; null, after a finding, when it is more than a turn.</summary>
    public double? Degrees(NumberSyntax number, string what)
    {
        if (Math.Abs(number.Value) <= 360) return number.Value;
        _report.OutOfRange(_scope.At(number.Span), $"{number.Text} is out of range for `{what}`.", "Give an angle from -360 to 360 degrees.");
        return null;
    }

    /// <summary>The colour that stands for itself, or null.</summary>
    public WireColour? Colour()
    {
        WordSyntax? first = null;
        WireColour? colour = null;
        foreach (var word in _clauses.Where(c => c.Keyword.Length == 0).SelectMany(c => c.All<WordSyntax>()))
        {
            if (first is not null)
            {
                _report.StatedTwice(_scope.At(word.Span), "the colour", _scope.At(first.Span));
                continue;
            }

            first = word;
            colour = Colours.Find(word.Text);
            if (colour is null) _report.UnknownColour(_scope.At(word.Span), word.Text);
        }

        return colour;
    }

    /// <summary>The contact rating after <c>rated</c>, or null.</summary>
    public ContactRating? Rating()
    {
        if (Find("rated") is not { } clause) return null;
        double? volts = null;
        double? amps = null;
        foreach (var quantity in clause.All<QuantitySyntax>())
        {
            if (quantity.Dimension == Dimension.Voltage) volts = Value(quantity, Dimension.Voltage, "a voltage");
            else amps = Value(quantity, Dimension.Current, "a current, such as 5 A,") ?? amps;
        }

        return amps is { } a ? new ContactRating(volts, a) : null;
    }

    /// <summary>The price after <c>price</c>, or null.</summary>
    public Price? Price()
    {
        if (Find("price") is not { } clause) return null;
        var amount = clause.All<NumberSyntax>().First();
        if (decimal.TryParse(amount.Text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value) && value <= HighestPrice)
            return new Price(value, clause.All<WordSyntax>().FirstOrDefault()?.Text ?? "");
        _report.OutOfRange(_scope.At(amount.Span), $"{amount.Text} is no price.", "Give an amount from zero to 1,000,000,000, such as 41.50 EUR.");
        return null;
    }

    /// <summary>Adds what any part may carry to a part.</summary>
    public T WithPurchase<T>(T part) where T : Part => part with
    {
        OrderText = Word("order")?.Text,
        UnitPrice = Price(),
        SparePieces = Count("spares", 0, 1_000_000) ?? 0,
        OnHand = Has("on-hand"),
    };
}
