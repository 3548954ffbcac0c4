using System.Text;
using Isopoh.Cryptography.Argon2;

namespace SwingStudy.Storage.Identities;

/// <summary>A key from a passphrase by Argon2id, which makes each guess cost memory and time. Source: RFC 9106.</summary>
/// <param name="MemoryKib">Memory in KiB.</param>
/// <param name="Passes">Passes over it.</param>
internal sealed record PassphraseKey(int MemoryKib, int Passes)
{
    /// <summary>Bytes of a key.</summary>
    internal const int KeyBytes = 32;

    /// <summary>64 MiB and three passes: the second choice of RFC 9106, section 4, for machines that cannot spare 2 GiB.</summary>
    internal static PassphraseKey Usual { get; } = new(64 * 1024, 3);

    /// <summary>The key; the same passphrase and salt always give the same.</summary>
    internal byte[] Derive(string passphrase, byte[] salt)
    {
        using var argon = new Argon2(new Argon2Config
        {
            Type = Argon2Type.HybridAddressing,
            Version = Argon2Version.Nineteen,
            MemoryCost = MemoryKib,
            TimeCost = Passes,
            Lanes = 1,
            Threads = 1,
            HashLength = KeyBytes,
            Salt = salt,
            Password = Encoding.UTF8.GetBytes(Composition.Compose(passphrase)),
        });
        using var key = argon.Hash();
        return [.. key.Buffer];
    }
}
