namespace Schematic.Binding;

/// <summary>Whether a used file was opened, or why not.</summary>
public enum PanelFileState
{
    /// <summary>It was opened.</summary>
    Opened,

    /// <summary>There is no such file.</summary>
    Missing,

    /// <summary>It lies outside the folder that files may be used from.</summary>
    Outside,

    /// <summary>It is there but cannot be read: a folder, no permission, too large.</summary>
    Unreadable,
}
