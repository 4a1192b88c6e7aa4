import '../main/contract/jitless.ts'
import { StrictMode } from 'react'
import { createRoot } from 'react-dom/client'
import { createClient } from '../main/contract/client.ts'
import { screenTransport } from '../main/contract/transport.ts'
import { App } from './app/app.tsx'
import { HostProvider } from './app/host.tsx'
import './styles/base.css'

const root = document.getElementById('root')
if (!root) throw new Error('index.html has no #root')
createRoot(root).render(
  <StrictMode>
    <HostProvider client={createClient(screenTransport())}>
      <App />
    </HostProvider>
  </StrictMode>,
)
