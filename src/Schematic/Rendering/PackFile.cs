namespace Schematic.Rendering;

/// <summary>A file to be written: its name without a folder, and its content.</summary>
public sealed record PackFile(string Name, byte[] Bytes);
