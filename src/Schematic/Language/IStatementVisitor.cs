namespace Schematic.Language;

/// <summary>An answer for every kind of statement; a new kind does not compile until each stage has one.</summary>
/// <typeparam name="T">The answer.</typeparam>
public interface IStatementVisitor<out T>
{
    /// <summary>A connector or a device.</summary>
    T Visit(PartSyntax part);

    /// <summary>An actuator.</summary>
    T Visit(ActuatorSyntax actuator);

    /// <summary>A switch or a gang of poles.</summary>
    T Visit(SwitchSyntax pole);

    /// <summary>A wire.</summary>
    T Visit(WireSyntax wire);

    /// <summary>A cable.</summary>
    T Visit(CableSyntax cable);

    /// <summary>A net.</summary>
    T Visit(NetSyntax net);

    /// <summary>A lock.</summary>
    T Visit(LockSyntax actuatorLock);

    /// <summary>An expectation.</summary>
    T Visit(ExpectSyntax expect);

    /// <summary>What must never be reached.</summary>
    T Visit(NeverSyntax never);

    /// <summary>Where a part is drawn.</summary>
    T Visit(PlaceSyntax place);

    /// <summary>Another way to buy.</summary>
    T Visit(AlternativeSyntax alternative);

    /// <summary>A setting of the drawing.</summary>
    T Visit(SettingSyntax setting);

    /// <summary>Another file that is used.</summary>
    T Visit(UseSyntax use);

    /// <summary>A statement of which no more than its name could be read.</summary>
    T Visit(UnreadableSyntax unreadable);
}
