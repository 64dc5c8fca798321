using System.Collections.Immutable;
using Schematic.Inserts;
using Schematic.Model;
using Schematic.Reports;

namespace Schematic.Layout.Faces;

/// <summary>The enlargement chosen for a connector on a sheet.</summary>
/// <param name="Scale">Lettering, enlargement, turn.</param>
/// <param name="IsSplit">Whether each view needs a page of its own.</param>
internal sealed record FaceFit(FaceScale Scale, bool IsSplit)
{
    private const double BetweenViewsMm = 12;

    private const int MostParts = 10;

    /// <summary>Two lines of caption above each view.</summary>
    private const double CaptionMm = 10;

    /// <summary>
    /// The most readable lettering at which both views fit, the largest aside: that is for connectors that have a sheet to
    /// themselves. A face is turned, cut into parts or given a page for each view rather than drawn without colour letters.
    /// </summary>
    public static FaceFit For(Connector connector, ImmutableArray<ContactUse> uses, double width, double height)
    {
        foreach (var lettering in FaceLettering.Choices.Skip(1).SkipLast(1))
        {
            var ways = Ways(connector, uses, lettering);
            var both = ways.FirstOrDefault(w => BothFit(connector, w, width, height));
            if (both is not null) return new FaceFit(both, IsSplit: false);
            var one = ways.FirstOrDefault(w => OneFits(connector, w, width, height));
            if (one is not null) return new FaceFit(one, IsSplit: true);
        }

        return Squeezed(connector, uses, width, height);
    }

    /// <summary>The largest lettering, whatever room it takes.</summary>
    public static FaceFit Largest(Connector connector, ImmutableArray<ContactUse> uses) =>
        new(FaceScale.For(connector, uses, FaceLettering.Choices[0], turned: false), IsSplit: false);

    /// <summary>As the user has it, turned a quarter, or, where that makes sense, cut into parts along the length.</summary>
    private static List<FaceScale> Ways(Connector connector, ImmutableArray<ContactUse> uses, FaceLettering lettering)
    {
        var whole = FaceScale.For(connector, uses, lettering, turned: false);
        var ways = new List<FaceScale> { whole, FaceScale.For(connector, uses, lettering, turned: true) };
        if (connector.Insert.Outline == InsertOutline.Round) return ways;
        var (width, height) = whole.SizeOf(connector);
        var longSideAcross = FaceScale.For(connector, uses, lettering, turned: height > width);
        ways.AddRange(Enumerable.Range(2, MostParts - 1).Select(parts => longSideAcross with { Parts = parts }));
        return ways;
    }

    /// <summary>No lettering fits: the circles get as small as they must, and the table names the contacts.</summary>
    private static FaceFit Squeezed(Connector connector, ImmutableArray<ContactUse> uses, double width, double height)
    {
        var scale = FaceScale.For(connector, uses, FaceLettering.Choices[^1], turned: connector.Insert.Contacts
            .Max(c => c.YMm) - connector.Insert.Contacts.Min(c => c.YMm) > width / 2);
        while (!OneFits(connector, scale, width, height)) scale = scale.Shrunk(0.95);
        return new FaceFit(scale, IsSplit: !BothFit(connector, scale, width, height));
    }

    private static bool BothFit(Connector connector, FaceScale scale, double width, double height)
    {
        var (w, h) = scale.SizeOf(connector);
        h += CaptionMm;
        return ((2 * w) + BetweenViewsMm <= width && h <= height) || (w <= width && (2 * h) + BetweenViewsMm <= height);
    }

    private static bool OneFits(Connector connector, FaceScale scale, double width, double height)
    {
        var (w, h) = scale.SizeOf(connector);
        return w <= width && h + CaptionMm <= height;
    }
}
