namespace SwingStudy.Reporting.Tests.Support;

/// <summary>Compares a text with the approved file of that name under <c>TestData/Approved</c>.</summary>
internal static class Approved
{
    private static readonly string Folder = Path.Combine(AppContext.BaseDirectory, "TestData", "Approved");

    /// <summary>Fails when the texts differ, and leaves what was received beside the approved copy in the output, to be looked at and copied to the sources.</summary>
    public static void Matches(string name, string received)
    {
        var file = Path.Combine(Folder, name);
        var approved = File.Exists(file) ? File.ReadAllText(file) : "";
        if (approved != received)
        {
            Directory.CreateDirectory(Folder);
            File.WriteAllText(file + ".received", received);
        }

        Assert.Equal(approved, received);
    }
}
