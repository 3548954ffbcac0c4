namespace SwingStudy.App.Demo;

/// <summary>One file of the demo's inbox.</summary>
/// <param name="Path">Relative to the inbox: source, then file.</param>
/// <param name="Bytes">What stands in it.</param>
internal sealed record DemoFile(string Path, byte[] Bytes);
